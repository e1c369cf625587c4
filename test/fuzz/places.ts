export type JsonValue = null | boolean | number | string | JsonValue[] | { [key: string]: JsonValue };
export type Holder = JsonValue[] | { [key: string]: JsonValue };

/** One value where it stands in a document. */
export interface JsonPlace {
  holder: Holder;
  /** The holder's own path, with `*` for the number of an item. */
  path: string;
  key: string;
}

/** Every value of a document but the whole, from the outside in. */
export function placesIn(value: JsonValue, path = ""): JsonPlace[] {
  const places: JsonPlace[] = [];
  gather(value, path, places);
  return places;
}

function gather(value: JsonValue, path: string, places: JsonPlace[]): void {
  if (typeof value !== "object" || value === null) return;
  const holder = value as Record<string, JsonValue>;
  for (const key of Object.keys(holder)) {
    places.push({ holder: value, path, key });
    gather(holder[key] as JsonValue, `${path}/${Array.isArray(value) ? "*" : key}`, places);
  }
}

/** Defines the key itself, `__proto__` too, as `JSON.parse` does. */
export function put(holder: Holder, key: string, value: JsonValue): void {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

export function takeOut(holder: Holder, key: string): void {
  if (Array.isArray(holder)) holder.splice(Number(key), 1);
  else delete holder[key];
}
