import { type Figure, figureRule, figureRuleOf, type Worked } from "../../../figures/index.ts";
import type { ResolvedMaking, ResolvedShade } from "../../../job/index.ts";
import { cite } from "../../../sources/index.ts";
import { FIT_SLACK, inches } from "../../../units/index.ts";
import { FINISHED_LENGTH } from "../../base/size-inputs.ts";
import { matchRepeat } from "./match-repeat.ts";

/** The published rule: (L − 3 in) / 6 in, rounded. */
const RULE_OFF_MM = inches(3);
const RULE_FOLD_MM = inches(6);
const MOST_SPACINGS = 200;
const SINGER = cite("singer-sewing", "folds = (L − 3 in) / 6 in");

/** How tape and cloth divide between the marks, mm. */
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

type HobbledShade = Pick<ResolvedShade, "cloths"> & { making: Pick<ResolvedMaking, "hobble"> };
type Rule = ResolvedMaking["hobble"]["rule"];

const TAPE = ["mm", "tape between two marks", "figure:shape.hobble-tape"] as const;

const TAPE_BETWEEN = figureRuleOf<{ rule: Rule }>()({
  id: "shape.hobble-tape",
  label: "Tape between two marks",
  symbol: "t",
  unit: "mm",
  formula: "L / q",
  inputs: { L: FINISHED_LENGTH, q: ["count", "spacings of the tape", "figure:shape.hobble-spacings"] },
  cite: ({ rule }) => (rule === "tape" ? cite("geometry") : SINGER),
  compute: ({ L, q }) => L / q,
});

/** Tape and cloth between two marks by the rule that the maker chose. */
export function hobbledSpacing(shade: HobbledShade, lengthMm: number): Worked<HobbledSpacing> {
  const { rule, tapeMm: mostMm } = shade.making.hobble;
  const counted = rule === "tape" ? byTape(mostMm, lengthMm) : byRule(rule, lengthMm);
  const spacings = counted.values;
  const tape = TAPE_BETWEEN.figure({ L: lengthMm, q: spacings }, { rule });
  const { cloth, ...matched } = clothOf(shade, tape.value);
  return {
    values: { spacings, tapeMm: tape.value, clothMm: cloth.value, ...matched },
    workings: [...counted.workings, tape, cloth],
  };
}

const BY_TAPE = figureRule({
  id: "shape.hobble-spacings",
  label: "Spacings of the tape",
  symbol: "q",
  unit: "count",
  formula: `min(${MOST_SPACINGS}, max(1, ceil(L / m)))`,
  inputs: { L: FINISHED_LENGTH, m: ["mm", "tape between two marks at most", "hobble/tapeMm"] },
  restsOn: ["hobble/rule"],
  cite: cite("geometry", "the fewest that keep to it"),
  compute: ({ L, m }) => Math.min(MOST_SPACINGS, Math.max(1, Math.ceil(L / m - FIT_SLACK))),
});

function byTape(tapeMm: number, lengthMm: number): Worked<number> {
  const spacings = BY_TAPE.figure({ L: lengthMm, m: tapeMm });
  return { values: spacings.value, workings: [spacings] };
}

const FOLDS = figureRule({
  id: "shape.hobble-folds",
  label: "Folds by the published rule",
  symbol: "n",
  unit: "count",
  formula: "max(1, floor((L − o) / s + 1 / 2))",
  inputs: { L: FINISHED_LENGTH, o: ["mm", "taken off"], s: ["mm", "a fold"] },
  restsOn: ["hobble/rule"],
  cite: SINGER,
  note: "rounded to the nearest whole number",
  compute: ({ L, o, s }) => Math.max(1, Math.floor((L - o) / s + 1 / 2)),
});

const BY_RULE = figureRuleOf<{ rule: Rule }>()({
  id: "shape.hobble-spacings",
  label: "Spacings of the tape",
  symbol: "q",
  unit: "count",
  formula: "n·z",
  inputs: {
    n: ["count", "folds by the published rule", "figure:shape.hobble-folds"],
    z: ["count", "spacings for each", "hobble/rule"],
  },
  cite: SINGER,
  note: ({ rule }) =>
    rule === "folds-of-six"
      ? "read as n folds of about 6 in: tape L/n, cloth 2L/n"
      : "read to the letter: cloth L/n, tape L/2n",
  compute: ({ n, z }) => n * z,
});

/** Both readings of the published rule: as many tape spacings as folds, or twice as many. */
function byRule(rule: Rule, lengthMm: number): Worked<number> {
  const folds = FOLDS.figure({ L: lengthMm, o: RULE_OFF_MM, s: RULE_FOLD_MM });
  const spacings = BY_RULE.figure({ n: folds.value, z: rule === "folds-of-six" ? 1 : 2 }, { rule });
  return { values: spacings.value, workings: [folds, spacings] };
}

const CLOTH = {
  id: "shape.hobble-cloth",
  label: "Cloth between two marks",
  symbol: "c",
  unit: "mm",
  restsOn: ["hobble/clothMm", "hobble/match", "hobble/repeats", "hobble/folds", "hobble/rule", "shade/face"],
} as const;

/** Never less than the tape: cloth cannot be stretched onto it. */
const FIXED = figureRule({
  ...CLOTH,
  formula: "max(a, t)",
  inputs: { a: ["mm", "cloth as fixed", "hobble/clothMm"], t: TAPE },
  cite: cite("maker"),
  compute: ({ a, t }) => Math.max(a, t),
});

const MATCHED = figureRule({
  ...CLOTH,
  formula: "m·R / n",
  inputs: {
    m: ["count", "repeats", "hobble/repeats", "hobble/fullness", "figure:shape.hobble-tape"],
    R: ["mm", "vertical repeat", "shade/face"],
    n: ["count", "folds after which the pattern comes back", "hobble/folds"],
  },
  cite: cite("hobbled-workroom", "cloth between rows = repeats × repeat / folds"),
  compute: ({ m, R, n }) => (m * R) / n,
});

const FULL = figureRuleOf<{ published: boolean }>()({
  ...CLOTH,
  formula: "x·t",
  inputs: ({ published }) => ({
    x: ["ratio", published ? "face and lining 2 × the length" : "cloth over tape", "hobble/fullness"],
    t: TAPE,
  }),
  cite: ({ published }) => (published ? SINGER : cite("hobbled-workroom", "fullness")),
  compute: ({ x, t }) => x * t,
});

function clothOf(
  { making: { hobble }, cloths }: HobbledShade,
  tapeMm: number,
): { cloth: Figure } & Pick<HobbledSpacing, "match" | "unmatched"> {
  const repeatMm = cloths.face.repeat?.verticalMm;
  if (hobble.clothMm !== undefined) return { cloth: FIXED.figure({ a: hobble.clothMm, t: tapeMm }) };
  const published = hobble.rule !== "tape";
  const fullness = published ? 2 : hobble.fullness;
  const full = () => FULL.figure({ x: fullness, t: tapeMm }, { published });
  if (!hobble.match || repeatMm === undefined) return { cloth: full() };
  const match = matchRepeat({
    repeatMm,
    tapeMm,
    fullness,
    ...(hobble.repeats === undefined ? {} : { repeats: hobble.repeats }),
    ...(hobble.folds === undefined ? {} : { folds: hobble.folds }),
  });
  if (match === undefined) return { cloth: full(), unmatched: { repeatMm } };
  return {
    cloth: MATCHED.figure({ m: match.repeats, R: repeatMm, n: match.folds }),
    match: { ...match, repeatMm },
  };
}
