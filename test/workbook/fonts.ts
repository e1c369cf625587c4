import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { WorkbookFonts } from "../../src/letters/index.ts";

const require = createRequire(import.meta.url);

function face(name: string): Uint8Array {
  return readFileSync(require.resolve(`@expo-google-fonts/source-sans-3/${name}/SourceSans3_${name}.ttf`));
}

/**
 * How an edge brings the typeface, here Node: bytes of the font files, once for all workbooks.
 * A browser fetches the same files from its own build and hands over the bytes.
 */
export const FONTS: WorkbookFonts = {
  regular: face("400Regular"),
  semibold: face("600SemiBold"),
  italic: face("400Regular_Italic"),
};
