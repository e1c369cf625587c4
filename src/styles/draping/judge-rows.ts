import type { Finding, Remedy } from "../../figures/index.ts";
import { LONGEST_MM, settingPatch } from "../../job/index.ts";
import type { Grid, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import { atShade } from "../base/at-shade.ts";
import { fewestEvenRows } from "../base/even-rows.ts";
import { headrailShort } from "../base/headrail-short.ts";
import type { ShadeWith } from "../base/style-shade.ts";
import type { PleatedRows } from "./pleated-rows.ts";

type FoldShade = ShadeWith<"fold">;

/** What the rows of a pleated shade do not satisfy. */
export function judgeRows(shade: FoldShade, size: Size, laid: PleatedRows, grid: Grid): Finding[] {
  if (laid.unmet.includes("length")) return [tooShort(shade, size, laid)];
  const over =
    shade.making.fold.stackMm !== undefined && grid.raisedHeightMm > shade.making.fold.stackMm + 1e-6;
  return [
    ...(laid.unmet.includes("largest") ? [tooFew(shade, laid)] : []),
    ...(laid.unmet.includes("smallest") ? [tooMany(shade, laid)] : []),
    ...headrailShort(shade, laid.headrailMm, laid.headrailNeededMm),
    ...(over ? [stackOver(shade, grid)] : []),
    ...(!over && grid.raisedHeightMm > size.finishedLengthMm / 2 ? [coversMuch(shade, grid)] : []),
  ];
}

function base(shade: FoldShade, key: string) {
  return atShade(shade, `making/fold/${key}`);
}

function rowsRemedy(shade: FoldShade, laid: PleatedRows): Remedy[] {
  const rows = fewestEvenRows(laid.travelMm, shade.making.fold.largestSpacingMm);
  if (rows === laid.rows.length || shade.making.fold.spacingMm !== undefined) return [];
  return [{ label: `Use ${rows} rows`, patch: settingPatch(shade, "fold", "rows", rows) }];
}

function spacingRemedy(shade: FoldShade): Remedy[] {
  const { spacingMm, largestSpacingMm } = shade.making.fold;
  if (spacingMm === undefined) return [];
  return [
    {
      label: `Set the spacing to ${lengthText(largestSpacingMm, shade.units)}`,
      patch: settingPatch(shade, "fold", "spacingMm", largestSpacingMm),
    },
  ];
}

function tooShort(shade: FoldShade, size: Size, laid: PleatedRows): Finding {
  return {
    ...base(shade, "headrailMm"),
    id: "shape.too-short",
    severity: "stop",
    text: `A shade ${lengthText(size.finishedLengthMm, shade.units)} long has no room for a fold between its hem and a headrail allowance of ${lengthText(laid.headrailNeededMm, shade.units)}.`,
    cite: cite("geometry"),
    remedies: [],
  };
}

function tooFew(shade: FoldShade, laid: PleatedRows): Finding {
  const { largestSpacingMm, spacingMm } = shade.making.fold;
  return {
    ...base(shade, spacingMm === undefined ? "rows" : "spacingMm"),
    id: "shape.rows-too-few",
    severity: "fix",
    text: `${counted(laid.rows.length, "row")} stand ${lengthText(laid.spacingMm, shade.units)} apart, more than the largest spacing of ${lengthText(largestSpacingMm, shade.units)}. The wider the rows, the larger the loop of cord that can be drawn out behind the shade.`,
    cite: cite("inner-cord-hazard"),
    remedies: [...rowsRemedy(shade, laid), ...spacingRemedy(shade)],
  };
}

function tooMany(shade: FoldShade, laid: PleatedRows): Finding {
  return {
    ...base(shade, "rows"),
    id: "shape.rows-too-many",
    severity: "fix",
    text: `The rows stand ${lengthText(laid.spacingMm, shade.units)} apart, under the ${lengthText(shade.making.fold.smallestSpacingMm, shade.units)} below which the stack only grows thicker.`,
    cite: cite("our-choice", "smallest useful spacing"),
    remedies: [...rowsRemedy(shade, laid), ...spacingRemedy(shade)],
  };
}

function stackOver(shade: FoldShade, grid: Grid): Finding {
  return {
    ...base(shade, "stackMm"),
    id: "shape.stack-over-limit",
    severity: "fix",
    text: `Raised, the shade hangs ${lengthText(grid.raisedHeightMm, shade.units)} at its lowest, over the limit of ${lengthText(shade.making.fold.stackMm ?? 0, shade.units)}: what dips between the columns or hangs beside them counts.`,
    cite: cite("catenary"),
    figures: ["shape.raised-height"],
    remedies:
      grid.raisedHeightMm < LONGEST_MM
        ? [
            {
              label: `Allow a stack of ${lengthText(Math.ceil(grid.raisedHeightMm), shade.units)}`,
              patch: settingPatch(shade, "fold", "stackMm", Math.ceil(grid.raisedHeightMm)),
            },
          ]
        : [],
  };
}

function coversMuch(shade: FoldShade, grid: Grid): Finding {
  return {
    ...base(shade, "rows"),
    id: "shape.stack-covers-much",
    severity: "note",
    text: `Raised, the shade still hangs ${lengthText(grid.raisedHeightMm, shade.units)}, more than half its length.`,
    cite: cite("our-choice"),
    figures: ["shape.raised-height"],
    remedies: [],
  };
}
