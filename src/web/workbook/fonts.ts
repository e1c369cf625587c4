import regularUrl from "@expo-google-fonts/source-sans-3/400Regular/SourceSans3_400Regular.ttf?url";
import italicUrl from "@expo-google-fonts/source-sans-3/400Regular_Italic/SourceSans3_400Regular_Italic.ttf?url";
import semiboldUrl from "@expo-google-fonts/source-sans-3/600SemiBold/SourceSans3_600SemiBold.ttf?url";
import type { WorkbookFonts } from "../../letters/index.ts";

async function bytesOf(url: string): Promise<Uint8Array> {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`a font could not be fetched (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}

let fonts: Promise<WorkbookFonts> | undefined;

/** The typeface as the PDF embeds it, fetched when the first workbook is made. */
export function fetchWorkbookFonts(): Promise<WorkbookFonts> {
  fonts ??= Promise.all([bytesOf(regularUrl), bytesOf(semiboldUrl), bytesOf(italicUrl)]).then(
    ([regular, semibold, italic]) => ({ regular, semibold, italic }),
  );
  fonts.catch(() => {
    fonts = undefined;
  });
  return fonts;
}
