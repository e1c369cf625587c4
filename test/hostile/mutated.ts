import fc from "fast-check";

/** Anything but what a field asks for. */
const wrong = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    "",
    "NaN",
    "Infinity",
    "35 3/8",
    0,
    -1,
    1.5,
    1e308,
    -1e308,
    5e-324,
    Number.MAX_SAFE_INTEGER + 2,
    [],
    {},
    [[[[]]]],
    "<script>alert(1)</script>",
    "javascript:alert(1)",
    "../../etc/passwd",
    "..\\..\\con",
    '=HYPERLINK("http://x")',
    "\u0000",
    "\u202eevil",
    "\ud800",
    "x".repeat(5000),
    "%s%n{{x}}",
  ),
  fc.string(),
  fc.double(),
  fc.jsonValue(),
);

/** Keys that reach for the machinery of objects, and plain strangers. */
const keys = fc.constantFrom(
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "length",
  "colour",
);

type Place = { holder: Record<string, unknown> | unknown[]; key: string };

function placesIn(value: unknown): Place[] {
  if (typeof value !== "object" || value === null) return [];
  const holder = value as Record<string, unknown>;
  return Object.keys(holder).flatMap((key) => [{ holder, key }, ...placesIn(holder[key])]);
}

/** Defines the key itself, `__proto__` too, as `JSON.parse` does. */
function put(holder: Place["holder"], key: string, value: unknown): void {
  Object.defineProperty(holder, key, { value, enumerable: true, configurable: true, writable: true });
}

/** What can be done to one place of a document. */
const deed = fc.oneof(
  wrong.map(
    (value) =>
      ({ holder, key }: Place) =>
        put(holder, key, value),
  ),
  fc.constant(({ holder, key }: Place) => {
    if (Array.isArray(holder)) holder.splice(Number(key), 1);
    else delete holder[key];
  }),
  fc.tuple(keys, wrong).map(([name, value]) => ({ holder }: Place) => {
    if (!Array.isArray(holder)) put(holder, name, value);
  }),
  fc.constant(({ holder, key }: Place) => {
    if (Array.isArray(holder)) holder.push(holder[Number(key)]);
  }),
);

/** A document with one to three places spoilt: emptied, replaced, doubled, or given what it should not have. */
export function mutated(document: string): fc.Arbitrary<string> {
  const spoil = fc.record({ at: fc.nat(), deed });
  return fc.array(spoil, { minLength: 1, maxLength: 3 }).map((spoils) => {
    const copy: unknown = JSON.parse(document);
    for (const { at, deed: act } of spoils) {
      const places = placesIn(copy);
      const place = places[at % places.length];
      if (place) act(place);
    }
    return JSON.stringify(copy);
  });
}
