import type { Finding, Remedy } from "../../figures/index.ts";
import { LONGEST_MM, leaveOutPatch, type ReadOf, settingPatch } from "../../job/index.ts";
import type { Form, Grid, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { inches, lengthText } from "../../units/index.ts";
import { counted } from "../../words/index.ts";
import { atShade } from "../base/at-shade.ts";
import { type EvenRows, fewestEvenRows } from "../base/even-rows.ts";
import { headrailShort } from "../base/headrail-short.ts";
import { needlessRibs } from "../base/needless-ribs.ts";
import type { Scallop } from "../base/scallop.ts";
import type { GATHERED_READS } from "./gathered-reads.ts";

/** A scallop wider than this swings and gapes (“How-to: Austrian shades”, 2008). */
const WIDEST_SCALLOP_MM = inches(12);
/** Edge cords nearer than this to the edge were not allowed by the older clauses. */
const LEAST_INSET_MM = inches(2);

/** What every gathered or shirred shade reads. */
export type GatheredShade = ReadOf<typeof GATHERED_READS>;

/** A gathered shade as it is laid. */
export interface GatherContext {
  shade: GatheredShade;
  size: Size;
  grid: Grid;
  laid: EvenRows;
  headrailNeededMm: number;
  form: Form;
  /** The scallop that the settings ask for, and the one that the length leaves room for. */
  asked: Scallop;
  scallop: Scallop;
}

/** What every gathered or shirred shade must observe, each with the reason. */
export function judgeGathers(context: GatherContext): Finding[] {
  const { shade, laid } = context;
  const ribs = needlessRibs(shade, "Ribs do not lie flat in gathered cloth");
  return [
    ...laid.unmet.map((what) => UNMET[what](context)),
    ...(laid.unmet.includes("length") ? [] : headrailShort(shade, laid.headrailMm, context.headrailNeededMm)),
    ...stackOver(context),
    ...deepScallop(context),
    ...wideScallops(context),
    ...edgeCords(context),
    ...noWeight(context),
    ...stiffLayers(shade),
    ...lostRepeat(shade),
    ...ribs,
  ];
}

function rowsRemedy({ shade, grid }: GatherContext): Remedy[] {
  const height = grid.travelMm;
  const rows = fewestEvenRows(height, shade.making.fold.largestSpacingMm);
  return rows === grid.rows.length
    ? []
    : [
        {
          label: `Use ${counted(rows, "row")}`,
          patch: settingPatch(shade, "fold", "rows", rows),
        },
      ];
}

const UNMET: Record<EvenRows["unmet"][number], (context: GatherContext) => Finding> = {
  largest: (context) => {
    const { shade, laid } = context;
    const { fold } = shade.making;
    const largest = lengthText(fold.largestSpacingMm, shade.units);
    return {
      ...atShade(shade, `making/fold/${fold.spacingMm === undefined ? "rows" : "spacingMm"}`),
      id: "shape.rows-too-few",
      severity: "fix",
      text: `Rows stand ${lengthText(laid.spacingMm, shade.units)} apart, more than the ${largest} asked for. The wider the rows, the larger the loop of cord that can be drawn out behind the shade.`,
      cite: cite("inner-cord-hazard"),
      figures: ["shape.row-spacing"],
      remedies:
        fold.spacingMm === undefined
          ? rowsRemedy(context)
          : [
              {
                label: `Set the spacing to ${largest}`,
                patch: settingPatch(shade, "fold", "spacingMm", fold.largestSpacingMm),
              },
            ],
    };
  },
  smallest: (context) => ({
    ...atShade(context.shade, "making/fold/rows"),
    id: "shape.rows-too-many",
    severity: "fix",
    text: `Rows stand ${lengthText(context.laid.spacingMm, context.shade.units)} apart, under the ${lengthText(context.shade.making.fold.smallestSpacingMm, context.shade.units)} below which the stack only grows thicker.`,
    cite: cite("our-choice", "smallest useful spacing"),
    figures: ["shape.row-spacing"],
    remedies: rowsRemedy(context),
  }),
  length: ({ shade, size }) => ({
    ...atShade(shade, "making/fold/headrailMm"),
    id: "shape.too-short",
    severity: "stop",
    text: `A shade ${lengthText(size.finishedLengthMm, shade.units)} long has no room for a row of rings between its scallops and the headrail allowance.`,
    cite: cite("geometry"),
    remedies: [],
  }),
};

function stackOver({ shade, grid, size }: GatherContext): Finding[] {
  const { stackMm } = shade.making.fold;
  const raised = lengthText(grid.raisedHeightMm, shade.units);
  if (stackMm === undefined || grid.raisedHeightMm <= stackMm + 1e-6) {
    return grid.raisedHeightMm <= size.finishedLengthMm / 2
      ? []
      : [
          {
            ...atShade(shade, "making/columns/count"),
            id: "shape.stack-covers-much",
            severity: "note",
            text: `Raised, the shade still hangs ${raised}, more than half its length. More columns make shallower scallops.`,
            cite: cite("our-choice"),
            figures: ["shape.raised-height"],
            remedies: [],
          },
        ];
  }
  return [
    {
      ...atShade(shade, "making/fold/stackMm"),
      id: "shape.stack-over-limit",
      severity: "fix",
      text: `Raised, the shade hangs ${raised}, over the limit of ${lengthText(stackMm, shade.units)}. Its scallops hang below the rings however many rows there are; more columns make them shallower.`,
      cite: cite("geometry"),
      figures: ["shape.raised-height"],
      remedies:
        grid.raisedHeightMm < LONGEST_MM
          ? [
              {
                label: `Allow a stack of ${raised}`,
                patch: settingPatch(shade, "fold", "stackMm", Math.ceil(grid.raisedHeightMm)),
              },
            ]
          : [],
    },
  ];
}

function deepScallop({ shade, asked, scallop }: GatherContext): Finding[] {
  if (asked.sagMm <= scallop.sagMm + 1e-6) return [];
  return [
    {
      ...atShade(shade, "making/gather"),
      id: "shape.scallop-too-deep",
      severity: "fix",
      text: `The scallops would hang ${lengthText(asked.sagMm, shade.units)}, over a quarter of the shade’s length; ${lengthText(scallop.sagMm, shade.units)} is drawn and computed. Take less cloth across, or more columns.`,
      cite: cite("our-choice", "at most a quarter of the length"),
      figures: ["shape.sag"],
      remedies: moreColumns(shade, asked.spanMm),
    },
  ];
}

/** The count that keeps scallops to the widest, where the maker may still choose it. */
function moreColumns(shade: GatheredShade, spanMm: number): Remedy[] {
  if (spanMm <= WIDEST_SCALLOP_MM || shade.making.columns.count !== undefined) return [];
  return [
    {
      label: `Set columns at most ${lengthText(inches(10), shade.units)} apart`,
      patch: settingPatch(shade, "columns", "largestSpacingMm", inches(10)),
    },
  ];
}

function wideScallops({ shade, grid, scallop }: GatherContext): Finding[] {
  if (grid.columnSpacingMm <= WIDEST_SCALLOP_MM + 1e-6) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const bays = Math.ceil((grid.columnSpacingMm * (grid.columns.length - 1)) / WIDEST_SCALLOP_MM - 1e-9);
  return [
    {
      ...atShade(shade, "making/columns/count"),
      id: "shape.scallops-too-wide",
      severity: "fix",
      text: `Scallops ${text(grid.columnSpacingMm)} wide, over the published ${text(WIDEST_SCALLOP_MM)}, hang ${text(scallop.sagMm)} and pull the columns together.`,
      cite: cite("austrian-2008", "scallops at most 12 in wide, tapes 10 to 12 in apart"),
      figures: ["shape.column-spacing", "shape.sag"],
      remedies:
        bays + 1 > 60
          ? []
          : [
              {
                label: `Use ${bays + 1} columns`,
                patch: settingPatch(shade, "columns", "count", bays + 1),
              },
            ],
    },
  ];
}

/** Tutorials and the older clauses disagree; the maker decides. */
function edgeCords({ shade, grid }: GatherContext): Finding[] {
  const inset = grid.columns[0]?.xMm ?? 0;
  if (shade.rearCords === "enclosed" || inset >= LEAST_INSET_MM - 1e-6) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const remedy: Remedy = {
    label: `Set the edge columns in by ${text(LEAST_INSET_MM)}`,
    patch: settingPatch(shade, "columns", "edgeInsetMm", LEAST_INSET_MM),
  };
  return [
    {
      ...atShade(shade, "making/columns/edgeInsetMm"),
      id: "shape.edge-cords-near-edge",
      severity: "note",
      text: `The outer cords run ${text(inset)} from the edge, as tutorials for this style have them. Older clauses on lift cords that can be reached ask for ${text(LEAST_INSET_MM)} at least, so that a hand does not find them.`,
      cite: cite("old-inner-cord-clauses", "4.4: side cords at least 2 in from the edge"),
      remedies: grid.columnSpacingMm * (grid.columns.length - 1) > 2 * LEAST_INSET_MM ? [remedy] : [],
    },
  ];
}

function noWeight({ shade }: GatherContext): Finding[] {
  const { weight } = shade.making.gather;
  if (weight === "rod") return [];
  const bags = weight === "shot-bags";
  return [
    {
      ...atShade(shade, "making/gather/weight"),
      id: bags ? "shape.loose-weights" : "shape.no-rod",
      severity: bags ? "note" : "fix",
      text: bags
        ? "Loose weights keep the edge down, but nothing keeps the columns apart: the sides swing inwards."
        : "Nothing holds the lower edge: the scallops draw the columns together and the sides swing inwards.",
      cite: cite("cutting-and-draping"),
      remedies: [{ label: "Hang a covered rod", patch: settingPatch(shade, "gather", "weight", "rod") }],
    },
  ];
}

function stiffLayers(shade: GatheredShade): Finding[] {
  return (["blackout", "interlining"] as const).flatMap((layer): Finding[] => {
    if (shade.cloths[layer] === undefined) return [];
    return [
      {
        ...atShade(shade, layer),
        id: `shape.gathered-${layer}`,
        severity: "fix",
        text:
          layer === "blackout"
            ? "Blackout does not gather: it stands out stiffly, and every needle hole along tapes and heading lets light in."
            : "Interlining does not gather: the folds become thick rolls and the shade heavy.",
        cite: layer === "blackout" ? cite("blackout-guide") : cite("common-practice"),
        remedies: [
          {
            label: `Leave the ${layer} out`,
            patch: leaveOutPatch(shade, layer),
          },
        ],
      },
    ];
  });
}

function lostRepeat(shade: GatheredShade): Finding[] {
  const { face } = shade.cloths;
  if (face.repeat === undefined) return [];
  return [
    {
      ...atShade(shade, "face"),
      id: "shape.repeat-lost",
      severity: "note",
      text: `${face.name} repeats every ${lengthText(face.repeat.verticalMm, shade.units)}: gathers swallow a pattern, and no motif shows whole. A small or plain pattern does better.`,
      cite: cite("common-practice"),
      remedies: [],
    },
  ];
}
