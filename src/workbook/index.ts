export { makeWorkbook, type WorkbookInput, type WorkbookProgress } from "./make-workbook.ts";
export type { PaperKind } from "./paper.ts";
export type { WorkbookFonts } from "./typeface.ts";
