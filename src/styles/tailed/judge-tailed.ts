import type { Finding } from "../../figures/index.ts";
import { type Brief, settingPatch, stylePatch } from "../../job/index.ts";
import type { Form, Grid, Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches, lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import { easeBetween } from "../draping/ease.ts";
import { hangTail } from "../draping/tail.ts";
import { withinShade } from "./inset.ts";

/** A wider centre droops between its two lines: recalled, the source names no width. */
const WIDEST_CENTRE = sourced(inches(40), "mm", cite("from-memory", "about 40 in between two lines"));
const SAME_MM = 0.5;

export function judgeTailed(brief: Brief, size: Size, grid: Grid, form: Form): Finding[] {
  return [...moved(brief, size), ...droops(brief, grid), ...longTails(brief, grid, form), ...noPleat(brief)];
}

function base(brief: Brief, key: string) {
  return atShade(brief, `making/pleat/${key}`);
}

/** How far the corner of a tail hangs below its column with the shade raised far enough, mm. */
export function tailLengthMm(grid: Grid, form: Form): number {
  const columnMm = grid.columns[0]?.xMm ?? 0;
  return hangTail(columnMm, columnMm + easeBetween(form, 0, columnMm, 0), Number.POSITIVE_INFINITY).dropMm;
}

function moved(brief: Brief, { finishedWidthMm: width }: Size): Finding[] {
  const { insetMm, insetShare } = brief.making.pleat;
  const wanted = insetMm ?? insetShare * width;
  const used = withinShade(wanted, width);
  if (Math.abs(used - wanted) <= SAME_MM) return [];
  return [
    {
      ...base(brief, insetMm === undefined ? "insetShare" : "insetMm"),
      id: "shape.pleat-inset-moved",
      weight: "fix",
      text: `Pleats ${lengthText(wanted, brief.units)} in from the edges of a shade ${lengthText(width, brief.units)} wide leave no ${wanted > used ? "centre" : "tails"}; ${lengthText(used, brief.units)} is used.`,
      cite: cite("geometry"),
      remedies: [
        {
          label: `Set the pleats in by ${lengthText(used, brief.units)}`,
          patch: settingPatch(brief, "pleat", "insetMm", used),
        },
      ],
    },
  ];
}

function droops(brief: Brief, grid: Grid): Finding[] {
  const spanMm = grid.columnSpacingMm;
  if (spanMm <= WIDEST_CENTRE.value) return [];
  const { centreLine, insetShare } = brief.making.pleat;
  return [
    {
      ...base(brief, centreLine ? "insetMm" : "centreLine"),
      id: "shape.tailed-centre-droops",
      weight: "fix",
      text: `${lengthText(spanMm, brief.units)} lie between two lift lines. Over about ${lengthText(WIDEST_CENTRE.value, brief.units)} the folds there droop too far${centreLine ? " even with a line in the middle" : "; a lift line in the middle carries them"}.`,
      cite: cite("tailed-workroom"),
      figures: ["shape.column-spacing"],
      remedies: centreLine
        ? [
            {
              label: "Make it a pleated balloon",
              patch: stylePatch(brief, "pleated-balloon"),
            },
          ]
        : [
            {
              label: "Add a lift line in the middle",
              ...(insetShare > 0 ? { changes: "one more cord" } : {}),
              patch: settingPatch(brief, "pleat", "centreLine", true),
            },
          ],
    },
  ];
}

function longTails(brief: Brief, grid: Grid, form: Form): Finding[] {
  const tailMm = tailLengthMm(grid, form);
  if (tailMm <= grid.travelMm + SAME_MM) return [];
  return [
    {
      ...base(brief, "insetMm"),
      id: "shape.tails-longer-than-shade",
      weight: "fix",
      text: `The tails would hang ${lengthText(tailMm, brief.units)} below their pleats, and the shade rises by only ${lengthText(grid.travelMm, brief.units)}: they never come free of the hem. Set the pleats nearer to the edges.`,
      cite: cite("inset-pleats", "a tail is about as long as its pleat is from the edge"),
      remedies: [],
    },
  ];
}

function noPleat(brief: Brief): Finding[] {
  const { foldedMm } = brief.making.pleat;
  if (foldedMm >= inches(4)) return [];
  return [
    {
      ...base(brief, "foldedMm"),
      id: "shape.pleat-too-small",
      weight: "mind",
      text: `A pleat of ${lengthText(foldedMm, brief.units)} gives the tails next to nothing to open with: they draw the centre out of shape.`,
      cite: cite("inset-pleats", "12 in (30 cm) for each pleat; 30 to 40 cm in another pattern"),
      remedies: [
        { label: "Fold away 12 in (30 cm)", patch: settingPatch(brief, "pleat", "foldedMm", inches(12)) },
      ],
    },
  ];
}
