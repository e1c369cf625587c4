import type { Layer } from "./cloth.ts";
import type { Grid } from "./grid.ts";

/** A place on the shade seen from the room: x from the left finished edge, y down from the top line, mm. */
export type ShadePoint = readonly [xMm: number, yMm: number];

/** Cloth of one stretch between two neighbouring rows, lowered: what it measures along cord or tape, and along the cloth. */
export interface Stretch {
  /** Row at its lower end; 0 is the stretch from the hem up to row 1. */
  row: number;
  cordMm: number;
  /** At least `cordMm`: the rest hangs as a fold, a tuck, gathers or a swag even with the shade lowered. */
  clothMm: number;
  /** Of that cloth, what is sewn up for good, as in tucks: it neither hangs nor opens. */
  sewnMm?: number;
}

/** What the style adds to the finished size before hems, in the order in which a maker adds it up, mm. */
export interface StyleAllowance {
  label: string;
  widthMm: number;
  lengthMm: number;
  /** Layers that take it; all of them where absent. */
  layers?: readonly Layer[];
  /** Taken up by seams of pieces cut apart, so that it is cut but not there once they are joined. */
  inSeams?: boolean;
}

/** A line or point to mark on the flat, hemmed cloth before it is pleated, tucked or gathered. */
export interface ClothMark {
  kind: "pleat" | "pleat-centre" | "tuck" | "tape" | "gather" | "row" | "rib";
  /** `x`: an upright line, measured from the left edge; `y`: a line across, measured from the hem up. */
  along: "x" | "y";
  atMm: number;
  label: string;
}

/** A pleat: cloth that is folded away behind one upright line. */
export interface Pleat {
  number: number;
  /** Where its edges meet on the finished shade, mm from the left. */
  xMm: number;
  /** Cloth folded away, mm. */
  foldedMm: number;
  /** Its left line, middle and right line on the flat, hemmed cloth, mm from the left. */
  flatMm: readonly [left: number, middle: number, right: number];
  /** The edges that show where it stands at the front as a box, mm from the left; they meet at `xMm` otherwise. */
  facesMm?: readonly [left: number, right: number];
}

/** What the lower edge does between two neighbouring columns, shade lowered. */
export interface Swag {
  fromMm: number;
  toMm: number;
  /** Cloth across it, mm, and how far its middle hangs below the line of its ends. */
  arcMm: number;
  sagMm: number;
}

/** Cloth across, from one upright line to the next, that is longer than the two are apart and opens towards the hem. */
export interface Ease {
  /** A column, or the finished edge where it hangs at the side as a tail, mm from the left. */
  fromMm: number;
  toMm: number;
  /** More cloth at the hem than the distance, mm. */
  extraMm: number;
  /** Above the hem on the flat cloth, where nothing of it is left, mm; the same all the way up where absent. */
  untilMm?: number;
}

/** Cloth that stays folded up at the lowest row with the shade down. */
export interface Pouf {
  clothMm: number;
  /** Folds that it lies in at each column. */
  loops: number;
}

/** A panel whose sides slant, or whose lower edge is cut in a curve. */
export interface ShapedPanel {
  /** Between its side hems at the lower edge, mm. */
  hemWidthMm: number;
  /** Wider at the hem than at the top line, at each side, mm. */
  taperMm: number;
  /** Ends of the curve above its middle, mm, and in from the edges. */
  dipMm: number;
  endsInMm: number;
  /** Top line to the hem at the columns, mm: the dip shorter than in the middle. */
  sideLengthMm: number;
  /** Points of the curve on the flat cloth, from its middle outwards, and how far above its lowest point, mm. */
  curve: { outMm: number; upMm: number }[];
}

/** Tape, cord or band by the length that the style asks for beside the usual parts. */
export interface Haberdashery {
  id: string;
  label: string;
  count: number;
  /** Of one, cut, mm. */
  lengthMm: number;
  /** Cut from the face cloth, so that it is not bought. */
  fromFace?: true;
  /** Made or bought piece by piece, whatever its length. */
  piece?: true;
}

/** A frill gathered onto finished edges of the face. */
export interface Frill {
  /** How far it stands from its seam, mm. */
  depthMm: number;
  edges: "hem" | "sides" | "sides-and-hem";
  /** Folded lengthwise, two thicknesses, instead of hemmed along both edges. */
  double: boolean;
  /** Its cloth end to end before it is gathered, mm. */
  clothMm: number;
}

/** How the style shapes its cloth beyond a plain rectangle with rings. */
export interface Form {
  /** From the hem up: stretch 0, then one above each row. Their cord lengths add up to the finished length. */
  stretches: Stretch[];
  /** On top of the finished size, before hems. */
  allowances: StyleAllowance[];
  /** How the width beyond the finished width is taken in. */
  across: "flat" | "pleated" | "gathered";
  pleats: Pleat[];
  /** Between columns, from the left, where the lower edge does not hang straight. */
  swags: Swag[];
  /** Between columns and beside them, where the cloth across can open once it is raised. */
  ease?: Ease[];
  pouf?: Pouf;
  panel?: ShapedPanel;
  /** Weight bar or rod along the hem, from the left finished edge; absent where the hem must hang soft. */
  bar?: {
    fromMm: number;
    toMm: number;
    /** How far it hangs above the lowest point of the hem, where that droops between the columns, mm. */
    aboveHemMm?: number;
  };
  /**
   * Rows that carry a rib, and on which face; none where empty. `between`: rows with another rib midway to the next
   * one above, which lies in the front edge of the fold. `bare`: laid on the cloth without a pocket.
   */
  ribs: { rows: number[]; face: "back" | "front"; between?: number[]; bare?: true };
  /** Rings in each column beside those of the rows, tied to the lowest one so that cloth stays drawn up there. */
  tiedRings?: number;
  frill?: Frill;
  /** To mark on the flat, hemmed face. */
  marks: ClothMark[];
  /** Places on the flat, hemmed face where a join shows least, mm from the left. */
  joinsAtMm: number[];
  /** The face is not joined of widths but of these pieces, from the left, each cut as long as the face. */
  apart?: CutApart[];
  haberdashery: Haberdashery[];
}

/** One of the pieces of which a face is joined where its pleats are cut apart. */
export interface CutApart {
  /** What it is called: `Insert 1 of 2`. */
  label: string;
  /** Width with the seams that join it, mm; the outer two are cut wider by what lies past the side edges. */
  widthMm: number;
}

/** Ribs of a shade, those between rows included. */
export function ribCount({ ribs }: Pick<Form, "ribs">): number {
  return ribs.rows.length + (ribs.between?.length ?? 0);
}

/** Rings of a shade: at every crossing of row and column, and those tied to the lowest. */
export function ringCount({ rows, columns }: Grid, { tiedRings = 0 }: Pick<Form, "tiedRings">): number {
  return (rows.length + tiedRings) * columns.length;
}

/** What of a layer hangs between hems, before they are turned: the finished size and what the style adds, mm. */
export function flatSize(
  size: { finishedWidthMm: number; finishedLengthMm: number },
  { allowances }: Pick<Form, "allowances">,
  layer: Layer,
): { widthMm: number; lengthMm: number } {
  const own = allowances.filter(
    ({ layers, inSeams = false }) => !inSeams && (layers === undefined || layers.includes(layer)),
  );
  return {
    widthMm: own.reduce((sum, { widthMm }) => sum + widthMm, size.finishedWidthMm),
    lengthMm: own.reduce((sum, { lengthMm }) => sum + lengthMm, size.finishedLengthMm),
  };
}
