import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { WorkbookFonts } from "../letters/index.ts";

const require = createRequire(import.meta.url);
const face = (name: string) =>
  readFileSync(require.resolve(`@expo-google-fonts/source-sans-3/${name}/SourceSans3_${name}.ttf`));

/** Source Sans 3 (SIL Open Font License 1.1) from the installed font package, for workbooks made under Node. */
export function readWorkbookFonts(): WorkbookFonts {
  return { regular: face("400Regular"), semibold: face("600SemiBold"), italic: face("400Regular_Italic") };
}
