import type { Finding, Remedy } from "../../figures/index.ts";
import { type Brief, LONGEST_MM, settingPatch } from "../../job/index.ts";
import type { Grid, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import { headrailShort } from "../folding/judge-ring-grid.ts";
import { fewestGatheredRows } from "../gathering/gathered-rows.ts";
import type { PleatedRows } from "./pleated-rows.ts";

/** What the rows of a pleated shade do not satisfy. */
export function judgeRows(brief: Brief, size: Size, laid: PleatedRows, grid: Grid): Finding[] {
  if (laid.unmet.includes("length")) return [tooShort(brief, size, laid)];
  const over =
    brief.making.fold.stackMm !== undefined && grid.raisedHeightMm > brief.making.fold.stackMm + 1e-6;
  return [
    ...(laid.unmet.includes("largest") ? [tooFew(brief, laid)] : []),
    ...(laid.unmet.includes("smallest") ? [tooMany(brief, laid)] : []),
    ...headrailShort(brief, laid.headrailMm, laid.headrailNeededMm),
    ...(over ? [stackOver(brief, grid)] : []),
    ...(!over && grid.raisedHeightMm > size.finishedLengthMm / 2 ? [coversMuch(brief, grid)] : []),
  ];
}

function base(brief: Brief, key: string) {
  return atShade(brief, `making/fold/${key}`);
}

function rowsRemedy(brief: Brief, laid: PleatedRows): Remedy[] {
  const rows = fewestGatheredRows(laid.travelMm, brief.making.fold.largestSpacingMm);
  if (rows === laid.rows.length || brief.making.fold.spacingMm !== undefined) return [];
  return [{ label: `Use ${rows} rows`, patch: settingPatch(brief, "fold", "rows", rows) }];
}

function spacingRemedy(brief: Brief): Remedy[] {
  const { spacingMm, largestSpacingMm } = brief.making.fold;
  if (spacingMm === undefined) return [];
  return [
    {
      label: `Set the spacing to ${lengthText(largestSpacingMm, brief.units)}`,
      patch: settingPatch(brief, "fold", "spacingMm", largestSpacingMm),
    },
  ];
}

function tooShort(brief: Brief, size: Size, laid: PleatedRows): Finding {
  return {
    ...base(brief, "headrailMm"),
    id: "shape.too-short",
    weight: "stop",
    text: `A shade ${lengthText(size.finishedLengthMm, brief.units)} long has no room for a fold between its hem and a headrail allowance of ${lengthText(laid.headrailNeededMm, brief.units)}.`,
    cite: cite("geometry"),
    remedies: [],
  };
}

function tooFew(brief: Brief, laid: PleatedRows): Finding {
  const { largestSpacingMm, spacingMm } = brief.making.fold;
  return {
    ...base(brief, spacingMm === undefined ? "rows" : "spacingMm"),
    id: "shape.rows-too-few",
    weight: "fix",
    text: `${laid.rows.length} row${laid.rows.length === 1 ? "" : "s"} stand ${lengthText(laid.spacingMm, brief.units)} apart, more than the largest spacing of ${lengthText(largestSpacingMm, brief.units)}. The wider the rows, the larger the loop of cord that can be drawn out behind the shade.`,
    cite: cite("inner-cord-hazard"),
    remedies: [...rowsRemedy(brief, laid), ...spacingRemedy(brief)],
  };
}

function tooMany(brief: Brief, laid: PleatedRows): Finding {
  return {
    ...base(brief, "rows"),
    id: "shape.rows-too-many",
    weight: "fix",
    text: `The rows stand ${lengthText(laid.spacingMm, brief.units)} apart, under the ${lengthText(brief.making.fold.smallestSpacingMm, brief.units)} below which the stack only grows thicker.`,
    cite: cite("our-choice", "smallest useful spacing"),
    remedies: [...rowsRemedy(brief, laid), ...spacingRemedy(brief)],
  };
}

function stackOver(brief: Brief, grid: Grid): Finding {
  return {
    ...base(brief, "stackMm"),
    id: "shape.stack-over-limit",
    weight: "fix",
    text: `Raised, the shade hangs ${lengthText(grid.raisedHeightMm, brief.units)} at its lowest, over the limit of ${lengthText(brief.making.fold.stackMm ?? 0, brief.units)}: what dips between the columns or hangs beside them counts.`,
    cite: cite("catenary"),
    figures: ["shape.raised-height"],
    remedies:
      grid.raisedHeightMm < LONGEST_MM
        ? [
            {
              label: `Allow a stack of ${lengthText(Math.ceil(grid.raisedHeightMm), brief.units)}`,
              patch: settingPatch(brief, "fold", "stackMm", Math.ceil(grid.raisedHeightMm)),
            },
          ]
        : [],
  };
}

function coversMuch(brief: Brief, grid: Grid): Finding {
  return {
    ...base(brief, "rows"),
    id: "shape.stack-covers-much",
    weight: "mind",
    text: `Raised, the shade still hangs ${lengthText(grid.raisedHeightMm, brief.units)}, more than half its length.`,
    cite: cite("our-choice"),
    figures: ["shape.raised-height"],
    remedies: [],
  };
}
