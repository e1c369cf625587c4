import { type Finding, figureRuleOf, type StageResult, staged } from "../../figures/index.ts";
import { reads, settingPatch } from "../../job/index.ts";
import type { Column } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { FIT_SLACK, lengthText } from "../../units/index.ts";
import type { ColumnsInput } from "../style.ts";
import { atShade } from "./at-shade.ts";
import { FINISHED_WIDTH } from "./size-inputs.ts";
import { REPORTED, type ShadeWith } from "./style-shade.ts";

/** More columns than any lock takes: the plan stays readable and the findings say the rest. */
const MOST_COLUMNS = 60;

/** Fewest columns with no bay wider than `largestMm`: n = ceil((W − 2e)/m) + 1, at least two. */
export function columnCount(widthMm: number, edgeInsetMm: number, largestMm: number): number {
  return Math.max(2, Math.ceil((widthMm - 2 * edgeInsetMm) / largestMm - FIT_SLACK) + 1);
}

/** What laying columns by their largest spacing reads. */
export const COLUMN_READS = reads({ shade: REPORTED, making: ["columns"] });

/** Most that two columns may be apart, and the setting that says so. */
export interface LargestSpacing {
  mm: number;
  setting: string;
}

const COUNT = figureRuleOf<Pick<LargestSpacing, "setting">>()({
  id: "shape.columns",
  label: "Ring columns",
  symbol: "n",
  unit: "count",
  formula: "max(2, ceil((W − 2·e) / m) + 1)",
  inputs: ({ setting }) => ({
    W: FINISHED_WIDTH,
    e: ["mm", "edge inset", "columns/edgeInsetMm"],
    m: ["mm", "largest spacing of columns", setting],
  }),
  restsOn: ["columns/count", "shade/style"],
  cite: cite("ring-spacing-faq", "count corrected"),
  compute: ({ W, e, m }) => columnCount(W, e, m),
});

/** Where the outer columns stand and what their number follows from, in the words of a style. */
export interface ColumnPlaces {
  inset: string;
  insetBy: readonly string[];
  countBy: readonly string[];
}

/** From one column to the next, mm, where the outer two are as far from the edges. */
export const COLUMN_SPACING = figureRuleOf<ColumnPlaces>()({
  id: "shape.column-spacing",
  label: "Spacing of columns",
  symbol: "b",
  unit: "mm",
  formula: "(W − 2·e) / (n − 1)",
  inputs: ({ inset, insetBy, countBy }) => ({
    W: FINISHED_WIDTH,
    e: ["mm", inset, ...insetBy],
    n: ["count", "ring columns", ...countBy],
  }),
  restsOn: ["shade/style"],
  cite: cite("geometry"),
  compute: ({ W, e, n }) => (W - 2 * e) / (n - 1),
});

const BY_LARGEST_SPACING: ColumnPlaces = {
  inset: "edge inset",
  insetBy: ["columns/edgeInsetMm"],
  countBy: ["columns/count", "figure:shape.columns"],
};

/**
 * Ring columns by the largest spacing and the edge inset, from the left.
 *
 * The published FAQ divides by one bay too few (12 in at W = 62 in, where it means 10); this is the
 * corrected count.
 */
export function layColumns(
  { shade, size }: ColumnsInput<ShadeWith<"columns">>,
  largest: LargestSpacing = {
    mm: shade.making.columns.largestSpacingMm,
    setting: "columns/largestSpacingMm",
  },
): StageResult<Column[]> {
  const { columns: asked } = shade.making;
  const width = size.finishedWidthMm;
  const insetMm = Math.min(asked.edgeInsetMm, width / 4);
  const needed = COUNT.figure({ W: width, e: insetMm, m: largest.mm }, largest);
  const count = Math.min(MOST_COLUMNS, asked.count ?? needed.value);
  const spacing = COLUMN_SPACING.figure({ W: width, e: insetMm, n: count }, BY_LARGEST_SPACING);
  const columns = Array.from({ length: count }, (_, i) => ({
    number: i + 1,
    xMm: i === count - 1 ? width - insetMm : insetMm + i * spacing.value,
  }));
  return staged(columns, {
    findings: () => [
      ...(insetMm < asked.edgeInsetMm ? [insetTooWide(shade, insetMm)] : []),
      ...(spacing.value > largest.mm + 1e-6
        ? [tooFewColumns(shade, count, needed.value, spacing.value, largest.mm)]
        : []),
    ],
    workings: () => [...(asked.count === undefined ? [needed] : []), spacing],
  });
}

function insetTooWide(shade: ShadeWith<"columns">, insetMm: number): Finding {
  return {
    id: "shape.inset-too-wide",
    severity: "fix",
    ...atShade(shade, "making/columns/edgeInsetMm"),
    text: `An edge inset of ${lengthText(shade.making.columns.edgeInsetMm, shade.units)} leaves no room between the edge columns; ${lengthText(insetMm, shade.units)} is used.`,
    cite: cite("geometry"),
    remedies: [
      {
        label: `Set the edge inset to ${lengthText(insetMm, shade.units)}`,
        patch: settingPatch(shade, "columns", "edgeInsetMm", insetMm),
      },
    ],
  };
}

function tooFewColumns(
  shade: ShadeWith<"columns">,
  count: number,
  needed: number,
  spacingMm: number,
  largestMm: number,
): Finding {
  return {
    id: "shape.columns-too-few",
    severity: "fix",
    ...atShade(shade, "making/columns/count"),
    text: `${count} columns stand ${lengthText(spacingMm, shade.units)} apart, more than the ${lengthText(largestMm, shade.units)} asked for: the hem and the folds may bow between them. ${needed} columns keep to it.`,
    cite: cite("ring-spacing-faq", "spacing too wide for limp cloth"),
    figures: ["shape.column-spacing"],
    remedies:
      needed > MOST_COLUMNS
        ? []
        : [{ label: `Use ${needed} columns`, patch: settingPatch(shade, "columns", "count", needed) }],
  };
}
