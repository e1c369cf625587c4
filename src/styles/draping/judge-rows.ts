import type { Finding, Remedy } from "../../figures/index.ts";
import { LONGEST_MM, type ResolvedShade, settingPatch } from "../../job/index.ts";
import type { Grid, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import { headrailShort } from "../folding/judge-ring-grid.ts";
import { fewestGatheredRows } from "../gathering/gathered-rows.ts";
import type { PleatedRows } from "./pleated-rows.ts";

/** What the rows of a pleated shade do not satisfy. */
export function judgeRows(resolved: ResolvedShade, size: Size, laid: PleatedRows, grid: Grid): Finding[] {
  if (laid.unmet.includes("length")) return [tooShort(resolved, size, laid)];
  const over =
    resolved.making.fold.stackMm !== undefined && grid.raisedHeightMm > resolved.making.fold.stackMm + 1e-6;
  return [
    ...(laid.unmet.includes("largest") ? [tooFew(resolved, laid)] : []),
    ...(laid.unmet.includes("smallest") ? [tooMany(resolved, laid)] : []),
    ...headrailShort(resolved, laid.headrailMm, laid.headrailNeededMm),
    ...(over ? [stackOver(resolved, grid)] : []),
    ...(!over && grid.raisedHeightMm > size.finishedLengthMm / 2 ? [coversMuch(resolved, grid)] : []),
  ];
}

function base(resolved: ResolvedShade, key: string) {
  return atShade(resolved, `making/fold/${key}`);
}

function rowsRemedy(resolved: ResolvedShade, laid: PleatedRows): Remedy[] {
  const rows = fewestGatheredRows(laid.travelMm, resolved.making.fold.largestSpacingMm);
  if (rows === laid.rows.length || resolved.making.fold.spacingMm !== undefined) return [];
  return [{ label: `Use ${rows} rows`, patch: settingPatch(resolved, "fold", "rows", rows) }];
}

function spacingRemedy(resolved: ResolvedShade): Remedy[] {
  const { spacingMm, largestSpacingMm } = resolved.making.fold;
  if (spacingMm === undefined) return [];
  return [
    {
      label: `Set the spacing to ${lengthText(largestSpacingMm, resolved.units)}`,
      patch: settingPatch(resolved, "fold", "spacingMm", largestSpacingMm),
    },
  ];
}

function tooShort(resolved: ResolvedShade, size: Size, laid: PleatedRows): Finding {
  return {
    ...base(resolved, "headrailMm"),
    id: "shape.too-short",
    severity: "stop",
    text: `A shade ${lengthText(size.finishedLengthMm, resolved.units)} long has no room for a fold between its hem and a headrail allowance of ${lengthText(laid.headrailNeededMm, resolved.units)}.`,
    cite: cite("geometry"),
    remedies: [],
  };
}

function tooFew(resolved: ResolvedShade, laid: PleatedRows): Finding {
  const { largestSpacingMm, spacingMm } = resolved.making.fold;
  return {
    ...base(resolved, spacingMm === undefined ? "rows" : "spacingMm"),
    id: "shape.rows-too-few",
    severity: "fix",
    text: `${laid.rows.length} row${laid.rows.length === 1 ? "" : "s"} stand ${lengthText(laid.spacingMm, resolved.units)} apart, more than the largest spacing of ${lengthText(largestSpacingMm, resolved.units)}. The wider the rows, the larger the loop of cord that can be drawn out behind the shade.`,
    cite: cite("inner-cord-hazard"),
    remedies: [...rowsRemedy(resolved, laid), ...spacingRemedy(resolved)],
  };
}

function tooMany(resolved: ResolvedShade, laid: PleatedRows): Finding {
  return {
    ...base(resolved, "rows"),
    id: "shape.rows-too-many",
    severity: "fix",
    text: `The rows stand ${lengthText(laid.spacingMm, resolved.units)} apart, under the ${lengthText(resolved.making.fold.smallestSpacingMm, resolved.units)} below which the stack only grows thicker.`,
    cite: cite("our-choice", "smallest useful spacing"),
    remedies: [...rowsRemedy(resolved, laid), ...spacingRemedy(resolved)],
  };
}

function stackOver(resolved: ResolvedShade, grid: Grid): Finding {
  return {
    ...base(resolved, "stackMm"),
    id: "shape.stack-over-limit",
    severity: "fix",
    text: `Raised, the shade hangs ${lengthText(grid.raisedHeightMm, resolved.units)} at its lowest, over the limit of ${lengthText(resolved.making.fold.stackMm ?? 0, resolved.units)}: what dips between the columns or hangs beside them counts.`,
    cite: cite("catenary"),
    figures: ["shape.raised-height"],
    remedies:
      grid.raisedHeightMm < LONGEST_MM
        ? [
            {
              label: `Allow a stack of ${lengthText(Math.ceil(grid.raisedHeightMm), resolved.units)}`,
              patch: settingPatch(resolved, "fold", "stackMm", Math.ceil(grid.raisedHeightMm)),
            },
          ]
        : [],
  };
}

function coversMuch(resolved: ResolvedShade, grid: Grid): Finding {
  return {
    ...base(resolved, "rows"),
    id: "shape.stack-covers-much",
    severity: "note",
    text: `Raised, the shade still hangs ${lengthText(grid.raisedHeightMm, resolved.units)}, more than half its length.`,
    cite: cite("our-choice"),
    figures: ["shape.raised-height"],
    remedies: [],
  };
}
