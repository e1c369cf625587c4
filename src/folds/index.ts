export { clothFeel } from "./fold-cloth.ts";
export type { FoldsInput } from "./folds-input.ts";
export { planFolds } from "./plan-folds.ts";
