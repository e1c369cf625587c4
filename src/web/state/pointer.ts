import { type PatchOperation, pointerTo, segmentsOf, valueAt } from "../../figures/index.ts";

export { segmentsOf, setPatch, valueAt } from "../../figures/index.ts";

/**
 * The patch that takes a value away, together with the parents that it leaves empty,
 * as long as these are listed as optional: a job holds only what the maker chose.
 */
export function clearPatch(document: unknown, pointer: string): PatchOperation[] {
  if (valueAt(document, pointer) === undefined) return [];
  const segments = segmentsOf(pointer);
  let last = segments.length;
  while (last > 1 && mayBeEmptied(segments.slice(0, last - 1))) {
    const parent = valueAt(document, pointerTo(segments.slice(0, last - 1)));
    if (Object.keys(parent ?? {}).length !== 1) break;
    last -= 1;
  }
  return [{ op: "remove", path: pointerTo(segments.slice(0, last)) }];
}

/** `…/making`, `…/making/fold`, `/workshop`, `/workshop/fold` go when nothing is left in them. */
function mayBeEmptied(segments: string[]): boolean {
  return segments.slice(-2).some((segment) => segment === "making" || segment === "workshop");
}
