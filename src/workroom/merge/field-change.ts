import type { PathStep } from "../protocol/index.ts";

/** The way down a job to one field: items of lists by their keys. */
export type FieldPath = readonly PathStep[];

/** The last step of a change of the order in which a list stands: from keys, to keys. */
export const ORDER = "#order";

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
