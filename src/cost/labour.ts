import { type Figure, figureRuleOf } from "../figures/index.ts";
import type { ResolvedRates } from "../job/index.ts";
import type { LabourLine } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { inches, MM_PER_M, SAME_LENGTH_MM } from "../units/index.ts";
import type { NeedsInput } from "./cost-input.ts";
import { ringsSewn } from "./existing-needs.ts";
import { toCent } from "./money.ts";

const HOUR_MIN = 60;

/** Minutes of one line, and what they cost: rounded to the cent once. */
export function labourLine(id: string, label: string, minutes: number, perHour: number): LabourLine {
  return { id, label, minutes, cost: toCent((minutes / HOUR_MIN) * perHour) };
}

const SEWN_INPUTS = {
  F: ["mm", "cut length of the face, for each side hem", "figure:cloth.face-cut-length"],
  W: ["mm", "cut width of the face, for the bottom hem", "figure:cloth.face-cut-width"],
  G: ["mm", "cut length of the lining, for each side", "shade/lining", "figure:cloth.lining-cut-length"],
  J: ["mm", "joins of widths", "hems/joins", "figure:cloth.*-length"],
  p: [
    "count",
    ({ tucks }: { tucks: boolean }) => (tucks ? "tucks" : "rib pockets"),
    "ribs/kind",
    "ribs/at",
    "figure:shape.*",
  ],
  B: ["mm", "finished width, for each of them", "figure:measure.finished-width"],
} as const;

const SEWN = figureRuleOf<{ tucks: boolean }>()({
  id: "cost.sewn",
  label: "Length of sewing",
  symbol: "S",
  unit: "mm",
  formula: "2·F + W + 2·G + J + p·B",
  inputs: SEWN_INPUTS,
  restsOn: ["lift/rearCords"],
  cite: cite("arithmetic"),
  compute: ({ F, W, G, J, p, B }) => 2 * F + W + 2 * G + J + p * B,
});

const SEWN_WITH_SLEEVES = figureRuleOf<{ tucks: boolean }>()({
  id: "cost.sewn",
  label: "Length of sewing",
  symbol: "S",
  unit: "mm",
  formula: "2·F + W + 2·G + J + p·B + 2·c·v",
  inputs: {
    ...SEWN_INPUTS,
    c: ["count", "sleeves over the cords", "lift/rearCords", "figure:shape.columns"],
    v: ["mm", "length of one, for both edges", "figure:cloth.sleeve-length"],
  },
  cite: cite("arithmetic"),
  compute: ({ F, W, G, J, p, B, c, v }) => 2 * F + W + 2 * G + J + p * B + 2 * c * v,
});

/** Hems, joins, lining sides, rib pockets and sleeves of one shade, mm. */
export function sewnLength({ size, cloth, form, shade }: NeedsInput): Figure {
  const face = cloth.layers.find((cut) => cut.layer === "face");
  const lining = cloth.layers.find((cut) => cut.layer === "lining");
  const { sleeves } = cloth;
  const pockets = shade.making.ribs.kind === "bare" ? 0 : cloth.ribLines.length;
  let tucks = 0;
  for (const { kind } of form.marks) if (kind === "tuck") tucks++;
  let joinsMm = 0;
  for (const cut of cloth.layers) joinsMm += Math.max(0, cut.panels.length - 1) * cut.cutLengthMm;
  const given = {
    F: face?.cutLengthMm ?? 0,
    W: face?.cutWidthMm ?? 0,
    G: lining?.cutLengthMm ?? 0,
    J: joinsMm,
    p: pockets + tucks,
    B: size.finishedWidthMm,
  };
  const of = { tucks: tucks > 0 };
  return sleeves === undefined
    ? SEWN.figure(given, of)
    : SEWN_WITH_SLEEVES.figure({ ...given, c: sleeves.count, v: sleeves.lengthMm }, of);
}

/** Width that labour is priced by: wider cloth counts as so many of these. */
const BILLED_WIDTH = sourced(
  inches(54),
  "mm",
  cite("workroom-price-terms", "billable widths = flat width / 54 in"),
);

/** Widths as a workroom counts them: cloth wider than 54 in counts as more than one (“Workroom price terms”). */
export function billableWidths(drops: number, usableWidthMm: number): number {
  if (usableWidthMm <= BILLED_WIDTH.value + SAME_LENGTH_MM) return drops;
  return Math.ceil((drops * usableWidthMm) / BILLED_WIDTH.value - 1e-9);
}

/** The work on one shade by the job's own times. */
export function labourOf(input: NeedsInput, rates: ResolvedRates, sewnMm: number): LabourLine[] {
  const { cloth, lift, existing } = input;
  const widths = cloth.layers.reduce(
    (total, cut) => total + billableWidths(cut.widths, cut.usableWidthMm),
    0,
  );
  const rings = ringsSewn(input);
  const hangs = existing !== undefined;
  const lines: [id: string, label: string, minutes: number][] = [
    ["measure", "Measure the window", rates.measureMin],
    ["cut", "Cut the cloth", rates.cutMinPerWidth * widths],
    ["sew", "Hem, join and line", (rates.sewMinPerM * sewnMm) / MM_PER_M],
    ["rings", "Mark and sew the rings", rates.ringMin * rings],
    ["rig", "Thread and level the cords", rates.rigMinPerCord * lift.cords.length],
    ["board", "Make and cover the board", hangs ? 0 : rates.boardMin],
    ["hang", hangs ? "Take the shade down and hang it again" : "Hang the shade", rates.hangMin],
  ];
  return lines
    .filter(([, , minutes]) => !hangs || minutes > 0)
    .map(([id, label, minutes]) => labourLine(id, label, minutes, rates.labourPerHour));
}

/** The same work over all shades, line by line, in the order of the work. */
export function sumLabour(all: LabourLine[][], rates: ResolvedRates): LabourLine[] {
  const sums = new Map<string, { label: string; minutes: number }>();
  for (const lines of all) {
    for (const { id, label, minutes } of lines) {
      const sum = sums.get(id);
      if (sum === undefined) sums.set(id, { label, minutes });
      else sum.minutes += minutes;
    }
  }
  return [...sums].map(([id, { label, minutes }]) => labourLine(id, label, minutes, rates.labourPerHour));
}
