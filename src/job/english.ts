import { americanSpeller, asWritten, britishIn, type Spell } from "../words/index.ts";
import type { Job } from "./job.ts";

/** In whose English a job is read, and what of it stays as the maker typed it. */
export interface English {
  spelling: "british" | "american";
  /** Names and notes of the job that the other spelling would change. */
  ownTexts: string[];
}

/** Fields of a job that hold free text. A test compares them with its schema. */
const TEXT_FIELDS = [
  "name",
  "client",
  "clientAddress",
  "note",
  "maker",
  "supplier",
  "lot",
  "number",
  "terms",
];

/** Of windows, cloths and parts that did not change since. */
const found = new WeakMap<object, readonly string[]>();

function textsIn(part: object): readonly string[] {
  const known = found.get(part);
  if (known !== undefined) return known;
  const texts = Object.entries(part).flatMap(([key, value]: [string, unknown]) => {
    if (typeof value === "string") return TEXT_FIELDS.includes(key) ? britishIn(value.split("\n")) : [];
    return typeof value === "object" && value !== null ? textsIn(value) : [];
  });
  found.set(part, texts);
  return texts;
}

const PLAIN: English = { spelling: "american", ownTexts: [] };
const BRITISH: English = { spelling: "british", ownTexts: [] };

/** The last one with words of its own: while a job is edited they seldom change. */
let last = PLAIN;

/** American where the shades hang in the United States and are measured in inches, else British. */
export function englishOf(job: Pick<Job, "units" | "place">): English {
  if (job.place !== "us" || job.units.system !== "imperial") return BRITISH;
  const ownTexts = [...new Set(textsIn(job))];
  if (ownTexts.length === 0) return PLAIN;
  const isLast =
    last.ownTexts.length === ownTexts.length && ownTexts.every((text, i) => text === last.ownTexts[i]);
  if (!isLast) last = { spelling: "american", ownTexts };
  return last;
}

const spellers = new WeakMap<English, Spell>();

/** How texts of a job are spelt. */
export function spellerOf(english: English): Spell {
  if (english.spelling === "british") return asWritten;
  const known = spellers.get(english) ?? americanSpeller(english.ownTexts);
  spellers.set(english, known);
  return known;
}
