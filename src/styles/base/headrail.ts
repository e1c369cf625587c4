import { figureRuleOf, type StageResult, staged } from "../../figures/index.ts";
import { type ReadOf, reads, STYLE_TRAITS } from "../../job/index.ts";
import { cite } from "../../sources/index.ts";
import { centimetres } from "../../units/index.ts";

/** Allowance beside the batten's face and the mechanism's depth, and the floor below which nobody goes. */
const BESIDE_RIB_MM = centimetres(3.5);
const BESIDE_MECHANISM_MM = centimetres(2.5);
const HEADRAIL_FLOOR_MM = centimetres(6.5);

/**
 * Least headrail allowance: flat cloth that stays above the gathered rings, mm.
 * Too little and the rings jam at the head while the shade still hangs low; too much only hangs lower.
 *
 * Source: workroom tutorials, “Headrail allowance explained”: batten face + 3.5 cm or mechanism depth
 * + 2.5 cm. The 6.5 cm floor is applied by the planner, not here.
 */
export function headrailAllowanceMm(parts: { ribFaceMm?: number; mechanismDepthMm?: number }): number {
  return Math.max(
    parts.ribFaceMm === undefined ? 0 : parts.ribFaceMm + BESIDE_RIB_MM,
    parts.mechanismDepthMm === undefined ? 0 : parts.mechanismDepthMm + BESIDE_MECHANISM_MM,
  );
}

/** What sits under the board and takes up the cords: the folds gather below it. */
export interface LiftPartsHeight {
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  /** What it is, in the working of the headrail allowance. */
  label: string;
}

/** What the headrail allowance reads of the shade. */
export const HEADRAIL_READS = reads({ shade: ["style", "opening", "board", "rib"], making: ["ribs"] });

/** Board and ribs of the shade, and what its cords run into. */
export interface HeadrailInput {
  shade: ReadOf<typeof HEADRAIL_READS>;
  liftParts: LiftPartsHeight;
}

interface NeededOf {
  ribbed: boolean;
  /** The head is not level. */
  falls: boolean;
  part: string;
}

const NEEDED = figureRuleOf<NeededOf>()({
  id: "shape.headrail-needed",
  label: "Headrail allowance needed",
  symbol: "T_min",
  unit: "mm",
  formula: ({ ribbed, falls }) =>
    `${ribbed ? "max(u, t + h + m, r + q)" : "max(u, t + h + m)"}${falls ? " + j" : ""}`,
  inputs: ({ ribbed, falls, part }) => {
    const board = {
      u: ["mm", "least allowance"],
      t: ["mm", "board thickness", "board/section"],
      h: [
        "mm",
        part,
        "lift/kind",
        "lift/lock",
        "lift/eye",
        "lift/turnEye",
        "lift/drive",
        "lift/tube",
        "lift/cord",
        "columns/count",
        "figure:rig.tube-height",
        "figure:shape.columns",
      ],
      m: ["mm", "beside the mechanism"],
    } as const;
    const rib = {
      r: ["mm", "rib face", "ribs/rib"],
      q: ["mm", "beside the rib"],
    } as const;
    const head = { j: ["mm", "fall of the head: nothing rises into it", "opening/head"] } as const;
    type Inputs = typeof board & typeof rib & typeof head;
    return { ...board, ...(ribbed ? rib : {}), ...(falls ? head : {}) } as Inputs;
  },
  restsOn: ["ribs/kind", "opening/head", "opening/heightsMm", "shade/style"],
  cite: cite("headrail-allowance"),
  note: "board and what hangs below it are the mechanism, since the cloth hangs from the board’s upper edge",
  compute: ({ u, t, h, r, j }, { ribbed }) => {
    const parts = { mechanismDepthMm: t + h, ...(ribbed ? { ribFaceMm: r } : {}) };
    return Math.max(u, headrailAllowanceMm(parts)) + j;
  },
});

/** Least flat cloth above the gathered folds of this shade, mm: what board, lift and ribs take at the head. */
export function headrailNeeded({ shade, liftParts }: HeadrailInput): StageResult<number> {
  const { opening, board, rib, making } = shade;
  const fallMm = Math.min(opening.head?.fallMm ?? 0, ...opening.heightsMm);
  const needed = NEEDED.figure(
    {
      u: HEADRAIL_FLOOR_MM,
      t: board.thicknessMm,
      h: liftParts.heightMm,
      m: BESIDE_MECHANISM_MM,
      r: rib.widthMm,
      q: BESIDE_RIB_MM,
      j: Math.max(0, fallMm),
    },
    {
      ribbed: making.ribs.kind !== "none" && STYLE_TRAITS[shade.style].carriesRibs,
      falls: fallMm > 0,
      part: liftParts.label,
    },
  );
  return staged(needed.value, { workings: () => [needed] });
}
