export { applyChanges, changesBetween, valueAtPath } from "./changes.ts";
export type { FieldConflict } from "./conflict.ts";
export { type FieldPath, isWithin, ORDER, pathKey } from "./field-change.ts";
export { sameJson } from "./json.ts";
export type { NumberedChanges } from "./meet.ts";
export { type Rebased, rebase } from "./rebase.ts";
export { postEdits, type Replica, replicaOf, takeIn, withBase, withoutOperation } from "./replica.ts";
