import type { PatchOperation } from "./finding.ts";

/** Segments of a JSON pointer (RFC 6901). */
export function segmentsOf(pointer: string): string[] {
  return pointer === ""
    ? []
    : pointer
        .slice(1)
        .split("/")
        .map((segment) => segment.replaceAll("~1", "/").replaceAll("~0", "~"));
}

function child(value: unknown, key: string): unknown {
  return typeof value === "object" && value !== null && Object.hasOwn(value, key)
    ? (value as Record<string, unknown>)[key]
    : undefined;
}

/** What stands at a pointer; undefined where nothing does. */
export function valueAt(document: unknown, pointer: string): unknown {
  return segmentsOf(pointer).reduce(child, document);
}

/** The patch that sets a value. RFC 6902 adds only into what exists, so a missing parent is added whole. */
export function setPatch(document: unknown, pointer: string, value: unknown): PatchOperation[] {
  const segments = segmentsOf(pointer);
  let parent = document;
  for (let depth = 0; depth < segments.length - 1; depth++) {
    const next = child(parent, segments[depth] ?? "");
    if (typeof next !== "object" || next === null) {
      const missing = segments
        .slice(depth + 1)
        .reduceRight<unknown>((inner, key) => ({ [key]: inner }), value);
      return [{ op: "add", path: pointerTo(segments.slice(0, depth + 1)), value: missing }];
    }
    parent = next;
  }
  const exists = child(parent, segments.at(-1) ?? "") !== undefined;
  return [{ op: exists ? "replace" : "add", path: pointer, value }];
}

/** The JSON pointer of segments. */
export function pointerTo(segments: readonly (string | number)[]): string {
  return segments
    .map((segment) => `/${String(segment).replaceAll("~", "~0").replaceAll("/", "~1")}`)
    .join("");
}
