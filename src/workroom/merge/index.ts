export { applyChanges, changesBetween } from "./changes.ts";
export type { FieldConflict } from "./conflict.ts";
export { type FieldChange, type FieldPath, isWithin, ORDER, type PathStep, pathKey } from "./field-change.ts";
export type { Json } from "./json.ts";
export type { NumberedChanges } from "./meet.ts";
export { type Rebased, rebase } from "./rebase.ts";
