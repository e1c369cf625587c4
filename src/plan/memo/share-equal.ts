/**
 * `next`, with every part of it that equals the same part of `previous` taken from `previous`: what did not change
 * keeps its identity, so that whoever reads it can tell at a glance. Both are trees of plain objects and arrays; what
 * is neither (a map, a function) is shared only where it is the same. Neither is changed.
 */
export function shareEqual<T>(previous: unknown, next: T): T {
  if (Object.is(previous, next) || !isObject(next) || !isObject(previous)) return next;
  if (Array.isArray(next)) return Array.isArray(previous) ? (shareItems(previous, next) as T) : next;
  return isPlain(previous) && isPlain(next) ? (shareFields(previous, next) as T) : next;
}

function shareItems(previous: readonly unknown[], next: readonly unknown[]): readonly unknown[] {
  let same = previous.length === next.length;
  let shared: unknown[] | undefined;
  for (let i = 0; i < next.length; i++) {
    const before = previous[i];
    const item = next[i];
    if (Object.is(before, item)) continue;
    const value = shareEqual(before, item);
    if (!Object.is(value, before)) same = false;
    if (value !== item) {
      shared ??= [...next];
      shared[i] = value;
    }
  }
  return same ? previous : (shared ?? next);
}

type Fields = Record<string, unknown>;

function shareFields(previous: Fields, next: Fields): Fields {
  let fields = 0;
  let same = true;
  let shared: Fields | undefined;
  for (const key in next) {
    fields++;
    const before = previous[key];
    const item = next[key];
    if (Object.is(before, item)) {
      // A field that is there and holds nothing is not the same as none.
      if (before === undefined && !Object.hasOwn(previous, key)) same = false;
      continue;
    }
    const value = isObject(item) ? shareEqual(before, item) : item;
    if (!Object.is(value, before)) same = false;
    if (value !== item) {
      shared ??= { ...next };
      shared[key] = value;
    }
  }
  if (same) for (const _ in previous) fields--;
  return same && fields === 0 ? previous : (shared ?? next);
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}

function isPlain(value: object): value is Fields {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
