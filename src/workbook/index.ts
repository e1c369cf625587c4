export { makeTestSheet } from "./make-test-sheet.ts";
export {
  countPages,
  makeWorkbook,
  type WorkbookInput,
  type WorkbookProgress,
  writeWorkbook,
} from "./make-workbook.ts";
export { childSafetyChoices } from "./pages/client/choices.ts";
export { PRINT_SETS, type PrintSet, SET_PRESETS, type SetPreset } from "./print-sets/index.ts";
export type { PaperKind } from "./typeset/paper.ts";
