export { makeWorkbook, type WorkbookInput, type WorkbookProgress } from "./make-workbook.ts";
export { PAPER_KINDS, PAPERS, type Paper, type PaperKind } from "./paper.ts";
export type { WorkbookFonts } from "./typeface.ts";
