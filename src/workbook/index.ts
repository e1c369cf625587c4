export { makeWorkbook, type WorkbookInput, type WorkbookProgress } from "./make-workbook.ts";
export type { PaperKind } from "./typeset/paper.ts";
export type { WorkbookFonts } from "./typeset/typeface.ts";
