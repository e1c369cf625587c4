/**
 * `next`, with every part of it that equals the same part of `previous` taken from `previous`: what did not change
 * keeps its identity, so that whoever reads it can tell at a glance. Both are trees of plain objects and arrays; what
 * is neither (a map, a function) is shared only where it is the same. Neither is changed.
 */
export function shareEqual<T>(previous: unknown, next: T): T {
  if (Object.is(previous, next)) return next;
  if (Array.isArray(next)) return Array.isArray(previous) ? (shareItems(previous, next) as T) : next;
  if (isPlain(previous) && isPlain(next)) return shareFields(previous, next) as T;
  return next;
}

function shareItems(previous: readonly unknown[], next: readonly unknown[]): readonly unknown[] {
  const shared = next.map((item, i) => shareEqual(previous[i], item));
  return previous.length === shared.length && shared.every((item, i) => Object.is(item, previous[i]))
    ? previous
    : shared;
}

type Fields = Record<string, unknown>;

function shareFields(previous: Fields, next: Fields): Fields {
  const keys = Object.keys(next);
  let same = keys.length === Object.keys(previous).length;
  const shared: Fields = {};
  for (const key of keys) {
    const value = shareEqual(previous[key], next[key]);
    shared[key] = value;
    // A field that is there and holds nothing is not the same as none.
    if (same && (!Object.is(value, previous[key]) || !Object.hasOwn(previous, key))) same = false;
  }
  return same ? previous : shared;
}

function isPlain(value: unknown): value is Fields {
  if (typeof value !== "object" || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
