export type { FoldsInput } from "./folds-input.ts";
export { planFolds } from "./plan-folds.ts";
