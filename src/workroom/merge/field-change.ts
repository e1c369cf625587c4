import type { Json } from "./json.ts";

/** One step down the job: a field by its name, or an item of a list by its key, never by its place. */
export type PathStep = string | { id: string };
export type FieldPath = readonly PathStep[];

/** The last step of a change of the order in which a list stands: from keys, to keys. */
export const ORDER = "#order";

/** What one field was, and what it became. Without `from` it was not there, without `to` it was taken away. */
export interface FieldChange {
  path: FieldPath;
  from?: Json;
  to?: Json;
}

/** A path as one text, for maps: JSON, so that no name can be taken for another. */
export function pathKey(path: FieldPath): string {
  return JSON.stringify(path);
}

/** Whether a path lies at or under another. */
export function isWithin(path: FieldPath, outer: FieldPath): boolean {
  return (
    path.length >= outer.length &&
    outer.every((step, at) => pathKey([step]) === pathKey(path.slice(at, at + 1)))
  );
}
