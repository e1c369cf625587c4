import type { Finding } from "../../figures/index.ts";
import { type ResolvedShade, settingPatch, stylePatch } from "../../job/index.ts";
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

export function judgeTailed(resolved: ResolvedShade, size: Size, grid: Grid, form: Form): Finding[] {
  return [
    ...moved(resolved, size),
    ...droops(resolved, grid),
    ...longTails(resolved, grid, form),
    ...noPleat(resolved),
  ];
}

function base(resolved: ResolvedShade, key: string) {
  return atShade(resolved, `making/pleat/${key}`);
}

/** How far the corner of a tail hangs below its column with the shade raised far enough, mm. */
export function tailLengthMm(grid: Grid, form: Form): number {
  const columnMm = grid.columns[0]?.xMm ?? 0;
  return hangTail(columnMm, columnMm + easeBetween(form, 0, columnMm, 0), Number.POSITIVE_INFINITY).dropMm;
}

function moved(resolved: ResolvedShade, { finishedWidthMm: width }: Size): Finding[] {
  const { insetMm, insetShare } = resolved.making.pleat;
  const wanted = insetMm ?? insetShare * width;
  const used = withinShade(wanted, width);
  if (Math.abs(used - wanted) <= SAME_MM) return [];
  return [
    {
      ...base(resolved, insetMm === undefined ? "insetShare" : "insetMm"),
      id: "shape.pleat-inset-moved",
      severity: "fix",
      text: `Pleats ${lengthText(wanted, resolved.units)} in from the edges of a shade ${lengthText(width, resolved.units)} wide leave no ${wanted > used ? "centre" : "tails"}; ${lengthText(used, resolved.units)} is used.`,
      cite: cite("geometry"),
      remedies: [
        {
          label: `Set the pleats in by ${lengthText(used, resolved.units)}`,
          patch: settingPatch(resolved, "pleat", "insetMm", used),
        },
      ],
    },
  ];
}

function droops(resolved: ResolvedShade, grid: Grid): Finding[] {
  const spanMm = grid.columnSpacingMm;
  if (spanMm <= WIDEST_CENTRE.value) return [];
  const { centreLine, insetShare } = resolved.making.pleat;
  return [
    {
      ...base(resolved, centreLine ? "insetMm" : "centreLine"),
      id: "shape.tailed-centre-droops",
      severity: "fix",
      text: `${lengthText(spanMm, resolved.units)} lie between two lift lines. Over about ${lengthText(WIDEST_CENTRE.value, resolved.units)} the folds there droop too far${centreLine ? " even with a line in the middle" : "; a lift line in the middle carries them"}.`,
      cite: cite("tailed-workroom"),
      figures: ["shape.column-spacing"],
      remedies: centreLine
        ? [
            {
              label: "Make it a pleated balloon",
              patch: stylePatch(resolved, "pleated-balloon"),
            },
          ]
        : [
            {
              label: "Add a lift line in the middle",
              ...(insetShare > 0 ? { changes: "one more cord" } : {}),
              patch: settingPatch(resolved, "pleat", "centreLine", true),
            },
          ],
    },
  ];
}

function longTails(resolved: ResolvedShade, grid: Grid, form: Form): Finding[] {
  const tailMm = tailLengthMm(grid, form);
  if (tailMm <= grid.travelMm + SAME_MM) return [];
  return [
    {
      ...base(resolved, "insetMm"),
      id: "shape.tails-longer-than-shade",
      severity: "fix",
      text: `The tails would hang ${lengthText(tailMm, resolved.units)} below their pleats, and the shade rises by only ${lengthText(grid.travelMm, resolved.units)}: they never come free of the hem. Set the pleats nearer to the edges.`,
      cite: cite("inset-pleats", "a tail is about as long as its pleat is from the edge"),
      remedies: [],
    },
  ];
}

function noPleat(resolved: ResolvedShade): Finding[] {
  const { foldedMm } = resolved.making.pleat;
  if (foldedMm >= inches(4)) return [];
  return [
    {
      ...base(resolved, "foldedMm"),
      id: "shape.pleat-too-small",
      severity: "note",
      text: `A pleat of ${lengthText(foldedMm, resolved.units)} gives the tails next to nothing to open with: they draw the centre out of shape.`,
      cite: cite("inset-pleats", "12 in (30 cm) for each pleat; 30 to 40 cm in another pattern"),
      remedies: [
        { label: "Fold away 12 in (30 cm)", patch: settingPatch(resolved, "pleat", "foldedMm", inches(12)) },
      ],
    },
  ];
}
