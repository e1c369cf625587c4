export { clothFeel } from "./fold-cloth.ts";
export { FOLDS_READS, type FoldsInput } from "./folds-input.ts";
export { planFolds } from "./plan-folds.ts";
