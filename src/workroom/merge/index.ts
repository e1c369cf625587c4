export { applyChanges, changesBetween } from "./changes.ts";
export type { FieldConflict } from "./conflict.ts";
export { type FieldPath, ORDER } from "./field-change.ts";
export type { NumberedChanges } from "./meet.ts";
export { type Rebased, rebase } from "./rebase.ts";
