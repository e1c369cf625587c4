export { makeWorkbook, type WorkbookInput, type WorkbookProgress } from "./make-workbook.ts";
export { PAPER_KINDS, PAPERS, type Paper, type PaperKind, PT_PER_MM } from "./paper.ts";
export type { WorkbookFonts } from "./typeface.ts";
