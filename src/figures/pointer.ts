import { compileJSONPointer, getIn, isJSONArray, isJSONObject, parseJSONPointer } from "immutable-json-patch";
import type { PatchOperation } from "./finding.ts";

/** What stands at a JSON pointer (RFC 6901); undefined where nothing does. */
export function valueAt(document: unknown, pointer: string): unknown {
  return getIn(document, parseJSONPointer(pointer));
}

/** The patch that sets a value. RFC 6902 adds only into what exists, so a missing parent is added whole. */
export function setPatch(document: unknown, pointer: string, value: unknown): PatchOperation[] {
  const path = parseJSONPointer(pointer);
  let depth = path.length - 1;
  while (depth > 0 && !canHold(getIn(document, path.slice(0, depth)))) depth -= 1;
  const whole = path.slice(depth + 1).reduceRight<unknown>((inner, key) => ({ [key]: inner }), value);
  const exists = depth === path.length - 1 && getIn(document, path) !== undefined;
  return [
    { op: exists ? "replace" : "add", path: compileJSONPointer(path.slice(0, depth + 1)), value: whole },
  ];
}

function canHold(value: unknown): boolean {
  return isJSONObject(value) || isJSONArray(value);
}

/**
 * The patch that takes a value away, together with the parents that it leaves empty,
 * as long as these are listed as optional: a job holds only what the maker chose.
 */
export function clearPatch(document: unknown, pointer: string): PatchOperation[] {
  if (valueAt(document, pointer) === undefined) return [];
  const path = parseJSONPointer(pointer);
  let last = path.length;
  while (last > 1 && mayBeEmptied(path.slice(0, last - 1))) {
    const parent: unknown = getIn(document, path.slice(0, last - 1));
    if (Object.keys(parent ?? {}).length !== 1) break;
    last -= 1;
  }
  return [{ op: "remove", path: compileJSONPointer(path.slice(0, last)) }];
}

/** `…/making`, `…/making/fold`, `/workshop`, `/workshop/fold` go when nothing is left in them. */
function mayBeEmptied(path: string[]): boolean {
  return path.slice(-2).some((segment) => segment === "making" || segment === "workshop");
}
