import type { WorkingBook } from "../../figures/index.ts";
import type { ResolvedShade } from "../../job/index.ts";
import { type Cite, cite } from "../../sources/index.ts";
import { FIT_SLACK, inches } from "../../units/index.ts";
import { matchRepeat } from "./match-repeat.ts";

/** The published rule: (L − 3 in) / 6 in, rounded. */
const RULE_OFF_MM = inches(3);
const RULE_FOLD_MM = inches(6);
const MOST_SPACINGS = 200;
const SINGER = cite("singer-sewing", "folds = (L − 3 in) / 6 in");

export interface HobbledSpacing {
  /** Tape marks from hem to top line, the hem not counted. */
  spacings: number;
  tapeMm: number;
  clothMm: number;
  /** Repeats that fill `folds` folds, where the pattern comes back on them. */
  match?: { repeats: number; folds: number; repeatMm: number };
  /** The face has a repeat and no whole number of folds meets it within the usual fullness. */
  unmatched?: { repeatMm: number };
}

/** Tape and cloth between two marks by the rule that the maker chose. */
export function hobbledSpacing(resolved: ResolvedShade, lengthMm: number, book: WorkingBook): HobbledSpacing {
  const { hobble } = resolved.making;
  const spacings =
    hobble.rule === "tape" ? byTape(hobble.tapeMm, lengthMm, book) : byRule(resolved, lengthMm, book);
  const tapeMm = book.figure("shape.hobble-tape", {
    label: "Tape between two marks",
    symbol: "t",
    unit: "mm",
    formula: "L / q",
    given: {
      L: [lengthMm, "mm", "finished length"],
      q: [spacings, "count", "spacings of the tape"],
    },
    cite: hobble.rule === "tape" ? cite("geometry") : SINGER,
    compute: ({ L, q }) => L / q,
  });
  return { spacings, tapeMm, ...clothOf(resolved, tapeMm, book) };
}

function byTape(tapeMm: number, lengthMm: number, book: WorkingBook): number {
  return book.figure("shape.hobble-spacings", {
    label: "Spacings of the tape",
    symbol: "q",
    unit: "count",
    formula: `min(${MOST_SPACINGS}, max(1, ceil(L / m)))`,
    given: {
      L: [lengthMm, "mm", "finished length"],
      m: [tapeMm, "mm", "tape between two marks at most"],
    },
    cite: cite("geometry", "the fewest that keep to it"),
    compute: ({ L, m }) => Math.min(MOST_SPACINGS, Math.max(1, Math.ceil(L / m - FIT_SLACK))),
  });
}

/** Both readings of the published rule: as many tape spacings as folds, or twice as many. */
function byRule(resolved: ResolvedShade, lengthMm: number, book: WorkingBook): number {
  const folds = book.figure("shape.hobble-folds", {
    label: "Folds by the published rule",
    symbol: "n",
    unit: "count",
    formula: "max(1, floor((L − o) / s + 1 / 2))",
    given: {
      L: [lengthMm, "mm", "finished length"],
      o: [RULE_OFF_MM, "mm", "taken off"],
      s: [RULE_FOLD_MM, "mm", "a fold"],
    },
    cite: SINGER,
    note: "rounded to the nearest whole number",
    compute: ({ L, o, s }) => Math.max(1, Math.floor((L - o) / s + 1 / 2)),
  });
  return book.figure("shape.hobble-spacings", {
    label: "Spacings of the tape",
    symbol: "q",
    unit: "count",
    formula: "n·z",
    given: {
      n: [folds, "count", "folds by the published rule"],
      z: [resolved.making.hobble.rule === "folds-of-six" ? 1 : 2, "count", "spacings for each"],
    },
    cite: SINGER,
    note:
      resolved.making.hobble.rule === "folds-of-six"
        ? "read as n folds of about 6 in: tape L/n, cloth 2L/n"
        : "read to the letter: cloth L/n, tape L/2n",
    compute: ({ n, z }) => n * z,
  });
}

function clothOf(
  resolved: ResolvedShade,
  tapeMm: number,
  book: WorkingBook,
): Omit<HobbledSpacing, "spacings" | "tapeMm"> {
  const { hobble } = resolved.making;
  const repeatMm = resolved.cloths.face.repeat?.verticalMm;
  if (hobble.clothMm !== undefined) return { clothMm: writeFixed(hobble.clothMm, tapeMm, book) };
  const published = hobble.rule !== "tape";
  const fullness = published ? 2 : hobble.fullness;
  if (hobble.match && repeatMm !== undefined) {
    const match = matchRepeat({
      repeatMm,
      tapeMm,
      fullness,
      ...(hobble.repeats === undefined ? {} : { repeats: hobble.repeats }),
      ...(hobble.folds === undefined ? {} : { folds: hobble.folds }),
    });
    if (match !== undefined)
      return { clothMm: writeMatched(match, repeatMm, book), match: { ...match, repeatMm } };
    return { clothMm: writeFull(tapeMm, fullness, published, book), unmatched: { repeatMm } };
  }
  return { clothMm: writeFull(tapeMm, fullness, published, book) };
}

const CLOTH = { label: "Cloth between two marks", symbol: "c", unit: "mm" } as const;

function writeMatched(
  { repeats, folds }: { repeats: number; folds: number },
  repeatMm: number,
  book: WorkingBook,
) {
  return book.figure("shape.hobble-cloth", {
    ...CLOTH,
    formula: "m·R / n",
    given: {
      m: [repeats, "count", "repeats"],
      R: [repeatMm, "mm", "vertical repeat"],
      n: [folds, "count", "folds after which the pattern comes back"],
    },
    cite: cite("hobbled-workroom", "cloth between rows = repeats × repeat / folds"),
    compute: ({ m, R, n }) => (m * R) / n,
  });
}

/** Never less than the tape: cloth cannot be stretched onto it. */
function writeFixed(clothMm: number, tapeMm: number, book: WorkingBook): number {
  return book.figure("shape.hobble-cloth", {
    ...CLOTH,
    formula: "max(a, t)",
    given: { a: [clothMm, "mm", "cloth as fixed"], t: [tapeMm, "mm", "tape between two marks"] },
    cite: cite("maker"),
    compute: ({ a, t }) => Math.max(a, t),
  });
}

function writeFull(tapeMm: number, fullness: number, published: boolean, book: WorkingBook): number {
  const from: Cite = published ? SINGER : cite("hobbled-workroom", "fullness");
  return book.figure("shape.hobble-cloth", {
    ...CLOTH,
    formula: "x·t",
    given: {
      x: [fullness, "ratio", published ? "face and lining 2 × the length" : "cloth over tape"],
      t: [tapeMm, "mm", "tape between two marks"],
    },
    cite: from,
    compute: ({ x, t }) => x * t,
  });
}
