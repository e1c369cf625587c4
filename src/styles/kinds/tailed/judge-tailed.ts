import type { Finding } from "../../../figures/index.ts";
import { settingPatch, stylePatch } from "../../../job/index.ts";
import type { Form, Grid, Size } from "../../../shade-plan/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import { inches, lengthText } from "../../../units/index.ts";
import { atShade } from "../../base/at-shade.ts";
import type { ShadeWith } from "../../base/style-shade.ts";
import { easeBetween } from "../../draping/ease.ts";
import { hangTail } from "../../draping/tail.ts";
import { withinShade } from "./inset.ts";

type TailedShade = ShadeWith<"pleat">;

/** A wider centre droops between its two lines: recalled, the source names no width. */
const WIDEST_CENTRE = sourced(inches(40), "mm", cite("from-memory", "about 40 in between two lines"));
const SAME_MM = 0.5;

/** What speaks against these tails and this centre, each with the reason. */
export function judgeTailed(shade: TailedShade, size: Size, grid: Grid, form: Form): Finding[] {
  return [...moved(shade, size), ...droops(shade, grid), ...longTails(shade, grid, form), ...noPleat(shade)];
}

function base(shade: TailedShade, key: string) {
  return atShade(shade, `making/pleat/${key}`);
}

/** How far the corner of a tail hangs below its column with the shade raised far enough, mm. */
export function tailLengthMm(grid: Grid, form: Form): number {
  const columnMm = grid.columns[0]?.xMm ?? 0;
  return hangTail(columnMm, columnMm + easeBetween(form, 0, columnMm, 0), Number.POSITIVE_INFINITY).dropMm;
}

function moved(shade: TailedShade, { finishedWidthMm: width }: Size): Finding[] {
  const { insetMm, insetShare } = shade.making.pleat;
  const wanted = insetMm ?? insetShare * width;
  const used = withinShade(wanted, width);
  if (Math.abs(used - wanted) <= SAME_MM) return [];
  return [
    {
      ...base(shade, insetMm === undefined ? "insetShare" : "insetMm"),
      id: "shape.pleat-inset-moved",
      severity: "fix",
      text: `Pleats ${lengthText(wanted, shade.units)} in from the edges of a shade ${lengthText(width, shade.units)} wide leave no ${wanted > used ? "centre" : "tails"}; ${lengthText(used, shade.units)} is used.`,
      cite: cite("geometry"),
      remedies: [
        {
          label: `Set the pleats in by ${lengthText(used, shade.units)}`,
          patch: settingPatch(shade, "pleat", "insetMm", used),
        },
      ],
    },
  ];
}

function droops(shade: TailedShade, grid: Grid): Finding[] {
  const spanMm = grid.columnSpacingMm;
  if (spanMm <= WIDEST_CENTRE.value) return [];
  const { centreLine, insetShare } = shade.making.pleat;
  return [
    {
      ...base(shade, centreLine ? "insetMm" : "centreLine"),
      id: "shape.tailed-centre-droops",
      severity: "fix",
      text: `${lengthText(spanMm, shade.units)} lie between two lift lines. Over about ${lengthText(WIDEST_CENTRE.value, shade.units)} the folds there droop too far${centreLine ? " even with a line in the middle" : "; a lift line in the middle carries them"}.`,
      cite: cite("tailed-workroom"),
      figures: ["shape.column-spacing"],
      remedies: centreLine
        ? [
            {
              label: "Make it a pleated balloon",
              patch: stylePatch(shade, "pleated-balloon"),
            },
          ]
        : [
            {
              label: "Add a lift line in the middle",
              ...(insetShare > 0 ? { changes: "one more cord" } : {}),
              patch: settingPatch(shade, "pleat", "centreLine", true),
            },
          ],
    },
  ];
}

function longTails(shade: TailedShade, grid: Grid, form: Form): Finding[] {
  const tailMm = tailLengthMm(grid, form);
  if (tailMm <= grid.travelMm + SAME_MM) return [];
  return [
    {
      ...base(shade, "insetMm"),
      id: "shape.tails-longer-than-shade",
      severity: "fix",
      text: `The tails would hang ${lengthText(tailMm, shade.units)} below their pleats, and the shade rises by only ${lengthText(grid.travelMm, shade.units)}: they never come free of the hem. Set the pleats nearer to the edges.`,
      cite: cite("inset-pleats", "a tail is about as long as its pleat is from the edge"),
      remedies: [],
    },
  ];
}

function noPleat(shade: TailedShade): Finding[] {
  const { foldedMm } = shade.making.pleat;
  if (foldedMm >= inches(4)) return [];
  return [
    {
      ...base(shade, "foldedMm"),
      id: "shape.pleat-too-small",
      severity: "note",
      text: `A pleat of ${lengthText(foldedMm, shade.units)} gives the tails next to nothing to open with: they draw the centre out of shape.`,
      cite: cite("inset-pleats", "12 in (30 cm) for each pleat; 30 to 40 cm in another pattern"),
      remedies: [
        { label: "Fold away 12 in (30 cm)", patch: settingPatch(shade, "pleat", "foldedMm", inches(12)) },
      ],
    },
  ];
}
