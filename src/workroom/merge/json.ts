import type { Json } from "../protocol/index.ts";

export type JsonObject = { [key: string]: Json };

export function isJsonObject(value: unknown): value is JsonObject {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Whether two values are one and the same as JSON: a key that holds undefined is not there. */
export function sameJson(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a) || Array.isArray(b)) {
    if (!(Array.isArray(a) && Array.isArray(b)) || a.length !== b.length) return false;
    return a.every((item, at) => sameJson(item, b[at]));
  }
  // JSON knows one zero.
  if (!(isJsonObject(a) && isJsonObject(b))) return a === b;
  const keys = keysOf(a);
  return keys.length === keysOf(b).length && keys.every((key) => sameJson(a[key], b[key]));
}

/** The keys under which there is something. */
export function keysOf(value: JsonObject): string[] {
  return Object.keys(value).filter((key) => value[key] !== undefined);
}

/** What stands under an own key, never what every object inherits. */
export function ownValue(value: JsonObject, key: string): Json | undefined {
  return Object.hasOwn(value, key) ? value[key] : undefined;
}
