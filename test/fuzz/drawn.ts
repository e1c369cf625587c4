import { SHEETS } from "../../src/shade-plan/index.ts";
import { withOwnIds } from "../any-job.ts";
import { Chance } from "./chance.ts";
import { type Holder, type JsonValue, placesIn, put, takeOut } from "./places.ts";
import { poolOf } from "./pool.ts";
import type { CaseDepth } from "./run-case.ts";

/** Job files: allowed and extreme, a little wrong, and hostile to the last byte. */
export const CASE_KINDS = ["valid", "wrong", "hostile"] as const;
export type CaseKind = (typeof CASE_KINDS)[number];

/** One case: everything follows from its kind and its number. */
export interface DrawnCase {
  kind: CaseKind;
  seed: number;
}

export function textOf({ kind, seed }: DrawnCase): string {
  const chance = new Chance(3 * seed + CASE_KINDS.indexOf(kind));
  const { texts, short } = poolOf(seed);
  if (kind === "hostile") return hostile(chance.oneOf(short), chance);
  const text = chance.oneOf(texts);
  const document = JSON.parse(text) as { [key: string]: JsonValue };
  cross(document, seed, chance);
  if (kind === "wrong") spoil(document, chance);
  return JSON.stringify(document);
}

/**
 * All are opened and planned. Their words and lists cost four times that, a sheet ten times, a workbook two hundred times:
 * some cases stand for all.
 */
export function depthOf({ seed }: DrawnCase): CaseDepth {
  const turn = (each: number, at: number) => seed % each === at;
  return {
    words: turn(20, 0),
    sheets: turn(50, 5) ? [SHEETS[Math.floor(seed / 50) % SHEETS.length] ?? "front"] : [],
    raises: [(Math.floor(seed / 50) % 11) / 10],
    cutting: turn(200, 7),
    remedies: turn(400, 1),
    workbook: turn(4000, 2),
  };
}

/** Most faults of one shade are as well seen on it alone, in a fraction of the time. */
const OF_ONE_WINDOW = 0.85;
const MOST_CROSSINGS = 12;

/** Takes fields of other documents of the pool, each at its own place: what all allow is allowed. */
function cross(document: { [key: string]: JsonValue }, seed: number, chance: Chance): void {
  if (chance.happens(OF_ONE_WINDOW)) leaveOneWindow(document);
  const { fields, counts } = poolOf(seed);
  // What stands in a part that another crossing has replaced is no longer there to change, which does no harm.
  const places = placesIn(document).filter(({ holder }) => !Array.isArray(holder));
  for (let left = chance.below(MOST_CROSSINGS + 1); left > 0; left--) {
    const { holder, path, key } = chance.oneOf(places);
    const all = counts.get(path) ?? 0;
    if (chance.happens(0.1) && (counts.get(`${path}/${key}`) ?? all) < all) {
      takeOut(holder, key);
      continue;
    }
    const taken = chance.oneOf(fields.get(path) ?? [{ key, value: null }]);
    if (taken.key !== "id" && taken.key !== "kind") put(holder, taken.key, copied(taken.value));
  }
  if (chance.happens(OF_ONE_WINDOW)) leaveOneWindow(document);
  Object.assign(document, withOwnIds(document as never));
}

function copied(value: JsonValue): JsonValue {
  return typeof value === "object" ? (JSON.parse(JSON.stringify(value)) as JsonValue) : value;
}

function leaveOneWindow(document: { [key: string]: JsonValue }): void {
  const rooms = document.rooms as { windows: JsonValue[] }[];
  rooms.splice(1);
  rooms[0]?.windows.splice(1);
}

/** Anything but what a field asks for. */
const WRONG: readonly JsonValue[] = [
  null,
  true,
  false,
  "",
  " ",
  "NaN",
  "Infinity",
  "35 3/8",
  "0x10",
  0,
  -0,
  -1,
  1.5,
  1e308,
  -1e308,
  5e-324,
  1e7,
  Number.MAX_SAFE_INTEGER + 2,
  [],
  {},
  [[[[]]]],
  [null],
  { length: 3 },
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
];

/** Keys that reach for the machinery of objects, and plain strangers. */
const STRANGE_KEYS = [
  "__proto__",
  "constructor",
  "prototype",
  "toString",
  "hasOwnProperty",
  "length",
  "colour",
];

/** One to three places are emptied, replaced, doubled, or given what they should not have. */
function spoil(document: JsonValue, chance: Chance): void {
  for (let left = 1 + chance.below(3); left > 0; left--) {
    const places = placesIn(document);
    if (places.length === 0) return;
    const { holder, key } = chance.oneOf(places);
    const value = (holder as Record<string, JsonValue>)[key] as JsonValue;
    const deed = chance.below(5);
    if (deed === 0) takeOut(holder, key);
    else if (deed === 1) put(holder, Array.isArray(holder) ? key : chance.oneOf(STRANGE_KEYS), wrong(chance));
    else if (deed === 2 && Array.isArray(holder)) holder.push(copied(value));
    else if (deed === 3 && typeof value === "number") put(holder, key, nudged(value, chance));
    else put(holder, key, wrong(chance));
  }
}

function wrong(chance: Chance): JsonValue {
  if (chance.happens(0.7)) return copied(chance.oneOf(WRONG));
  if (chance.happens(0.5)) return (chance.next() - 0.5) * 10 ** chance.below(12);
  return characters(chance, 12);
}

/** Often still allowed, and just beyond a limit as often as not where it stood at one. */
function nudged(value: number, chance: Chance): number {
  return chance.oneOf([value + 1, value - 1, -value, value * 1000, value / 1000, value * 2 * chance.next()]);
}

function characters(chance: Chance, most: number): string {
  return String.fromCodePoint(
    ...Array.from({ length: chance.below(most + 1) }, () =>
      chance.happens(0.8) ? 32 + chance.below(95) : chance.below(0x11_0000),
    ),
  );
}

/** Values that reach for what objects and numbers do behind one's back. */
const TRAPS = [
  '{"length":{"toString":null,"valueOf":null}}',
  '{"toString":1}',
  '{"__proto__":{"polluted":1}}',
  '{"constructor":{"prototype":null}}',
  "[[[[[[[[[[]]]]]]]]]]",
  "1e400",
  "-0",
  "5e-324",
  '"\\u0000"',
  '"\\ud800"',
];
const MOST_EDITS = 4;
const DEEP = 3000;

function hostile(text: string, chance: Chance): string {
  const way = chance.next();
  if (way < 0.4) return trapped(text, chance);
  if (way < 0.8) return withCharactersSpoilt(text, chance);
  if (way < 0.98) return JSON.stringify(strange(chance, 4));
  return "[".repeat(chance.below(DEEP)) + text + "]".repeat(chance.below(DEEP));
}

/** Some value of a job is a trap. */
function trapped(text: string, chance: Chance): string {
  const values = [...text.matchAll(/:(?:"[^"\\]*"|[\d.]+|true|null)/g)];
  if (values.length === 0) return chance.oneOf(TRAPS);
  const value = chance.oneOf(values);
  return `${text.slice(0, value.index)}:${chance.oneOf(TRAPS)}${text.slice(value.index + value[0].length)}`;
}

/** Characters lost, doubled or put in. */
function withCharactersSpoilt(text: string, chance: Chance): string {
  let spoilt = text;
  for (let left = 1 + chance.below(MOST_EDITS); left > 0; left--) {
    const from = chance.below(spoilt.length + 1);
    const lost = chance.below(4);
    const again = chance.happens(0.2) ? spoilt.slice(from, from + chance.below(200)) : "";
    spoilt = spoilt.slice(0, from) + again + characters(chance, 3) + spoilt.slice(from + lost);
  }
  return spoilt;
}

/** Any JSON at all, with names that a job has among those that it has not. */
function strange(chance: Chance, deep: number): JsonValue {
  const way = chance.below(deep > 0 ? 4 : 2);
  if (way === 0) return wrong(chance);
  if (way === 1) return characters(chance, 8);
  const count = chance.below(5);
  if (way === 2) return Array.from({ length: count }, () => strange(chance, deep - 1));
  const holder: Holder = {};
  for (let n = 0; n < count; n++) {
    const names = chance.happens(0.5) ? ["format", "version", "rooms", "units", "id"] : STRANGE_KEYS;
    put(holder, chance.oneOf(names), strange(chance, deep - 1));
  }
  return holder;
}
