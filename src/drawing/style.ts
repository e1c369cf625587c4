import type { Role } from "./model.ts";
import type { Paint } from "./paints.ts";
import type { Stroke } from "./placed.ts";

/** Parallel lines across an area, mm on paper. */
interface Hatch {
  angleDeg: number;
  spacingMm: number;
  stroke: Stroke;
}

/** How a role looks on paper: the one table for screens, PDF and DXF. */
export interface Look {
  /** Layer in a DXF file. */
  layer: string;
  /** What it stands for, in the legend. */
  legend: string;
  stroke?: Stroke;
  /** For open lines of a role whose areas have no outline. */
  openStroke?: Stroke;
  fill?: Paint;
  hatch?: Hatch;
  text: Paint;
}

const pen = (widthMm: number, paint: Paint = "ink", dashMm?: readonly number[]): Stroke =>
  dashMm === undefined ? { paint, widthMm } : { paint, widthMm, dashMm };

/** Pens by meaning, mm: an edge is seen first, a fold and a measure last. */
const EDGE = 0.5;
const FIRM = 0.35;
const PLAIN = 0.25;
const THIN = 0.18;
const HAIR = 0.13;

const HIDDEN_DASH = [1.6, 0.9];
const STITCH_DASH = [0.9, 0.7];
const CHAIN_DASH = [3.2, 0.8, 0.6, 0.8];

const look = (
  layer: string,
  legend: string,
  rest: Omit<Look, "layer" | "legend" | "text"> & { text?: Paint },
) => ({
  layer,
  legend,
  text: "ink" as Paint,
  ...rest,
});

export const LOOKS: Record<Role, Look> = {
  finishedEdge: look("FINISHED-EDGE", "Finished edge", { stroke: pen(EDGE) }),
  fold: look("FOLD", "Fold", { stroke: pen(THIN) }),
  crease: look("CREASE", "Pleat or tuck", { stroke: pen(PLAIN) }),
  gather: look("GATHER", "Gathers", { stroke: pen(HAIR, "pencil") }),
  tape: look("TAPE", "Tape", { stroke: pen(PLAIN, "pencil", [0.5, 0.5]) }),
  gridLine: look("GRID", "Line of a chart", { stroke: pen(HAIR, "chalk") }),
  weightCurve: look("WEIGHT", "Weight on the cords", { stroke: pen(PLAIN, "pencil"), text: "pencil" }),
  pullCurve: look("PULL", "Pull that raises it", { stroke: pen(EDGE, "stop"), text: "stop" }),
  holdCurve: look("HOLD", "Force that holds it", { stroke: pen(FIRM, "accent", [2, 0.9]), text: "accent" }),
  hidden: look("HIDDEN", "Hidden", { stroke: pen(THIN, "ink", HIDDEN_DASH) }),
  cut: look("CUT", "Cut here", { stroke: pen(FIRM) }),
  numberedCut: look("CUT-ORDER", "Cut, with its number", { stroke: pen(PLAIN) }),
  flaw: look("FLAW", "Flaw in the cloth", { stroke: pen(PLAIN, "stop"), text: "stop" }),
  stitch: look("STITCH", "Stitch", { stroke: pen(PLAIN, "ink", STITCH_DASH) }),
  grain: look("GRAIN", "Grain", { stroke: pen(THIN) }),
  markLine: look("MARK", "Line to mark", { stroke: pen(THIN, "accent", CHAIN_DASH), text: "accent" }),
  ring: look("RING", "Ring", { stroke: pen(PLAIN), fill: "paper" }),
  rib: look("RIB", "Rib", { stroke: pen(THIN), fill: "wood" }),
  bar: look("BAR", "Weight bar", { stroke: pen(THIN), fill: "metal" }),
  board: look("BOARD", "Mounting board", { stroke: pen(FIRM), fill: "wood" }),
  covering: look("COVERING", "Covering", { stroke: pen(THIN, "ink", HIDDEN_DASH) }),
  bracket: look("BRACKET", "Bracket", { stroke: pen(PLAIN), fill: "metal" }),
  screw: look("SCREW", "Screw", { stroke: pen(THIN), fill: "paper" }),
  eye: look("EYE", "Screw eye", { stroke: pen(PLAIN), fill: "paper" }),
  housing: look("LOCK", "Housing of the lock", { stroke: pen(FIRM), fill: "metal" }),
  roller: look("ROLLER", "Smooth roller", { stroke: pen(PLAIN), fill: "lining" }),
  toothedRoller: look("ROLLER-TOOTHED", "Toothed roller", { stroke: pen(PLAIN), fill: "wood" }),
  dividerWire: look("DIVIDER-WIRE", "Divider wire", { stroke: pen(EDGE) }),
  cord: look("CORD", "Cord", { stroke: pen(0.6) }),
  sleeve: look("SLEEVE", "Cord sleeve", { stroke: pen(THIN, "ink", STITCH_DASH), fill: "lining" }),
  tube: look("TUBE", "Lift tube", { stroke: pen(PLAIN), fill: "metal" }),
  spool: look("SPOOL", "Spool", { stroke: pen(PLAIN), fill: "paper" }),
  tubeSupport: look("TUBE-SUPPORT", "Support of tube or loop", { stroke: pen(PLAIN), fill: "wrong" }),
  drive: look("DRIVE", "Drive of the tube", { stroke: pen(FIRM), fill: "metal" }),
  loop: look("LOOP", "Loop", { stroke: pen(FIRM) }),
  wand: look("WAND", "Wand", { stroke: pen(PLAIN), fill: "wood" }),
  opening: look("OPENING", "Opening", { stroke: pen(PLAIN, "pencil", HIDDEN_DASH), text: "pencil" }),
  glass: look("GLASS", "Glass", { stroke: pen(HAIR, "pencil"), fill: "glass", text: "pencil" }),
  wall: look("WALL", "Wall", {
    stroke: pen(PLAIN, "pencil"),
    fill: "wall",
    hatch: { angleDeg: 45, spacingMm: 2, stroke: pen(HAIR, "chalk") },
    text: "pencil",
  }),
  level: look("LEVEL", "Shared level", { stroke: pen(HAIR, "accent", CHAIN_DASH), text: "accent" }),
  floor: look("FLOOR", "Floor", { stroke: pen(FIRM), text: "pencil" }),
  faceCloth: look("FACE", "Face, right side", { fill: "face", openStroke: pen(PLAIN) }),
  bandCloth: look("BAND", "Band of another cloth", { fill: "wood", openStroke: pen(THIN) }),
  liningCloth: look("LINING", "Lining", {
    fill: "lining",
    hatch: { angleDeg: -45, spacingMm: 4.5, stroke: pen(0.09, "chalk") },
    openStroke: pen(THIN, "pencil"),
  }),
  wrongSide: look("WRONG-SIDE", "Wrong side", {
    stroke: pen(THIN),
    fill: "wrong",
    openStroke: pen(PLAIN, "pencil"),
  }),
  clothOnBolt: look("BOLT", "Cloth on the bolt", { stroke: pen(THIN, "pencil"), fill: "cloth" }),
  waste: look("WASTE", "Not used", {
    hatch: { angleDeg: 45, spacingMm: 2.2, stroke: pen(HAIR, "pencil") },
    text: "pencil",
  }),
  selvedge: look("SELVEDGE", "Selvedge", { stroke: pen(FIRM, "ink", [0.35, 0.8]) }),
  repeatLine: look("REPEAT", "Pattern repeat", { stroke: pen(THIN, "accent", [2, 1]), text: "accent" }),
  seam: look("SEAM", "Seam", { stroke: pen(PLAIN, "ink", [2.4, 0.7, 0.5, 0.7, 0.5, 0.7]) }),
  dimension: look("DIMENSION", "Measure", { stroke: pen(HAIR, "pencil") }),
  leader: look("LEADER", "Pointer", { stroke: pen(HAIR, "pencil") }),
  label: look("LABEL", "Name", { stroke: pen(THIN), fill: "paper" }),
  note: look("NOTE", "Note", { stroke: pen(HAIR, "pencil"), text: "pencil" }),
  testSquare: look("TEST-SQUARE", "Test square", { stroke: pen(FIRM) }),
  overlapMark: look("OVERLAP", "Overlap of sheets", {
    stroke: pen(THIN, "pencil", HIDDEN_DASH),
    text: "pencil",
  }),
  ghost: look("GHOST", "Behind or elsewhere", { stroke: pen(THIN, "chalk", [1, 0.8]), text: "pencil" }),
  picture: look("PICTURE", "Picture", {}),
  // Of parts of a hand that lie over one another the outer half of each outline stays: one outline round all of them.
  hand: look("HAND", "Hand", { stroke: pen(2 * FIRM), fill: "paper" }),
  skin: look("SKIN", "Hand, within its outline", { fill: "paper", openStroke: pen(PLAIN) }),
  tool: look("TOOL", "Tool", { stroke: pen(FIRM), fill: "metal" }),
  motion: look("MOTION", "Way it is moved", { stroke: pen(EDGE, "accent"), fill: "accent", text: "accent" }),
  thread: look("THREAD", "Thread", { stroke: pen(PLAIN, "accent"), text: "accent" }),
};

/** Pen of an oblique tick, an origin ring or an arrow head. */
export const TICK_PEN: Stroke = pen(PLAIN);
