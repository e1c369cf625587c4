import { type Figure, figureRule, figureRuleOf } from "../../figures/index.ts";
import type { ResolvedMaking } from "../../job/index.ts";
import type { Form, Size } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { FINISHED_WIDTH } from "../base/size-inputs.ts";

/** What decides where pleats stand, and how many there are. */
const PLACES = [
  "pleat/insetMm",
  "pleat/insetShare",
  "pleat/edges",
  "figure:shape.pleat-inset",
  "figure:shape.column-spacing",
  "figure:measure.finished-width",
] as const;

const FLAT_WIDTH = figureRule({
  id: "shape.flat-width",
  label: "Width of the flat, hemmed cloth",
  symbol: "W_f",
  unit: "mm",
  formula: "W + F",
  inputs: {
    W: FINISHED_WIDTH,
    F: [
      "mm",
      "cloth in all pleats",
      "pleat/foldedMm",
      "pleat/edges",
      "columns/count",
      "figure:shape.columns",
    ],
  },
  cite: cite("inset-pleats", "+12 in (30 cm) for each pleat"),
  compute: ({ W, F }) => W + F,
});

interface Piece {
  id: "shape.insert-cut" | "shape.edge-insert-cut" | "shape.centre-cut";
  label: string;
  what: string;
  by: readonly string[];
}

const PIECE_CUT = figureRuleOf<Piece>()({
  id: ({ id }) => id,
  label: ({ label }) => label,
  symbol: "C_p",
  unit: "mm",
  formula: "p + 2·s",
  inputs: ({ what, by }) => ({
    p: ["mm", what, ...by],
    s: ["mm", "seam on each piece", "hems/seamMm"],
  }),
  restsOn: ["pleat/cut"],
  cite: cite("inset-pleats", "centre 80 cm cut 83, inserts 39 cm cut 42"),
  compute: ({ p, s }) => p + 2 * s,
});

const INSERT: Piece = {
  id: "shape.insert-cut",
  label: "Pleat insert: cut width",
  what: "cloth in one pleat",
  by: ["pleat/foldedMm", "pleat/edges"],
};

const EDGE_INSERT: Piece = {
  id: "shape.edge-insert-cut",
  label: "Pleat insert at the edge: cut width",
  what: "half a pleat",
  by: ["pleat/foldedMm", "pleat/edges"],
};

const BETWEEN: Piece = {
  id: "shape.centre-cut",
  label: "Piece between two pleats: cut width",
  what: "between two pleats",
  by: PLACES,
};

const SIDE_CUT = figureRule({
  id: "shape.side-cut",
  label: "Side piece: cut width",
  symbol: "C_p",
  unit: "mm",
  formula: "p + s + h",
  inputs: {
    p: ["mm", "edge to the first pleat", ...PLACES, "columns/edgeInsetMm"],
    s: ["mm", "seam on each piece", "hems/seamMm"],
    h: ["mm", "side hem", "hems/sideTurnMm", "hems/sideTurns"],
  },
  restsOn: ["pleat/cut"],
  cite: cite("inset-pleats", "sides 35 cm cut 38"),
  compute: ({ p, s, h }) => p + s + h,
});

/** Flat width of the pleated cloth, and the cut widths of its pieces where the pleats are cut apart, mm. None without pleats. */
export function pleatFigures(
  { pleat: { cut }, hems, board }: Pick<ResolvedMaking, "pleat" | "hems" | "board">,
  size: Pick<Size, "finishedWidthMm">,
  { pleats }: Pick<Form, "pleats">,
): Figure[] {
  const [pleat, second] = pleats;
  if (pleat === undefined) return [];
  const folded = pleats.map(({ foldedMm }) => foldedMm);
  const flat = FLAT_WIDTH.figure({ W: size.finishedWidthMm, F: folded.reduce((sum, mm) => sum + mm, 0) });
  if (cut === "in-one") return [flat];
  const s = hems.seamMm;
  const widest = Math.max(...folded);
  return [
    flat,
    PIECE_CUT.figure({ p: widest, s }, INSERT),
    ...(pleat.foldedMm < widest ? [PIECE_CUT.figure({ p: pleat.foldedMm, s }, EDGE_INSERT)] : []),
    ...(second === undefined ? [] : [PIECE_CUT.figure({ p: second.xMm - pleat.xMm, s }, BETWEEN)]),
    // Where the sides are not hemmed alone, the make-up of the face says what comes on top.
    ...(isHemmedAlone({ hems, board })
      ? [SIDE_CUT.figure({ p: pleat.xMm, s, h: hems.sideTurnMm * hems.sideTurns })]
      : []),
  ];
}

/** The sides are hemmed, and no cloth of them wraps round the board. */
export function isHemmedAlone({ hems, board }: Pick<ResolvedMaking, "hems" | "board">): boolean {
  return hems.makeUp !== "bagged-out" && board.returns !== "wrapped";
}
