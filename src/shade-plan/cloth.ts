export const LAYERS = ["face", "interlining", "blackout", "lining"] as const;
/** Layers from the room to the glass. */
export type Layer = (typeof LAYERS)[number];
export const LAYER_NAMES: Record<Layer, string> = {
  face: "Face",
  interlining: "Interlining",
  blackout: "Blackout",
  lining: "Lining",
};

/** One piece to cut. Pieces of a layer lie side by side, seams between them. */
export interface Panel {
  /** `face-1`: layer and place from the left, seen from the right side of the cloth. */
  id: string;
  label: string;
  /** Cut size, mm. */
  widthMm: number;
  lengthMm: number;
  /** Left cut edge of the panel in the joined layer, mm (joined width, seams sewn). */
  joinedXMm: number;
  /** A full usable width of the cloth. */
  full: boolean;
  /**
   * Where its upper left cut corner lies in the pattern, mm as cut: below and right of the corner of the repeat in
   * which it lies. Absent on plain cloth; across only where that repeat is known (a half drop between joined widths is
   * in `alongMm` then).
   */
  inRepeat?: { alongMm: number; acrossMm?: number };
}

/**
 * Where a piece lies on the bolt, right side up, tops towards the end that is cut first: x across the cloth from the
 * left selvedge (the pattern standing upright), y along it, mm. A layer that is turned sideways has its top at the right
 * selvedge and its left edge towards the end that is cut first.
 */
export interface Lay {
  panelId: string;
  xMm: number;
  yMm: number;
  widthMm: number;
  lengthMm: number;
}

/** One layer of a shade, cut and laid. */
export interface LayerCut {
  layer: Layer;
  clothId: string;
  clothName: string;
  /** In full light, `#rrggbb`: its own, else that of its kind. */
  colour: string;
  /** Flat size of the joined layer before hemming, mm. */
  cutWidthMm: number;
  cutLengthMm: number;
  /** Cut length raised to whole repeats, where the pattern asks for it, mm. */
  repeatLengthMm: number;
  usableWidthMm: number;
  /** Drops off the bolt, side by side in the joined layer or shared by panels that lie beside each other. */
  widths: number;
  panels: Panel[];
  lays: Lay[];
  /** Length that leaves the bolt, mm, and the same raised to the step in which the cloth is sold. */
  lengthMm: number;
  buyMm: number;
  /** How the cut size is made up: what was added to the finished size, mm. */
  makeUp: { label: string; widthMm: number; lengthMm: number }[];
  /** Cloth beyond the finished outline at each edge, mm as cut. */
  edges: { leftMm: number; rightMm: number; topMm: number; bottomMm: number };
  /** Turned sideways on the bolt: its length lies across the cloth. */
  turned: boolean;
  /** How the places of the joins were found. */
  joinsAt: "none" | "equal-parts" | "under-columns" | "cut-apart";
  /** Seam lines on the flat, hemmed layer, mm from its left edge. */
  seamsMm: number[];
  /** Cloth before the first cut, so that the pattern falls where it is wanted, mm. The bolt begins with a repeat. */
  startWasteMm: number;
  /** Where the pattern falls on the finished shade. */
  motif?: Motif;
  /** One repeat in `SWATCH_SIDE` × `SWATCH_SIDE` colours, row by row, rrggbb each: from a photo of the cloth. */
  swatch?: string;
  repeatMm?: number;
  match?: "straight" | "half-drop";
}

/**
 * The lattice of the pattern in coordinates of the finished shade: x from its left edge seen from the room, y down
 * from the top line, mm. A repeat has its upper left corner at the origin and at every step of the repeat from there;
 * on a half drop every second column is half a repeat lower.
 */
export interface Motif {
  originXMm: number;
  originYMm: number;
  /** The same along the cloth, which is longer than the shade where the style adds to it: from the top line down, mm. */
  originAlongMm: number;
  repeatXMm: number;
  repeatYMm: number;
  match: "straight" | "half-drop";
  /** The repeat across was given; otherwise the width between two seams stands in for it. */
  acrossKnown: boolean;
}

/** A piece beside the panels of the layers: a strip, a band, a cover. */
export interface Trim {
  /** `board-cover`, `banding-side` … */
  id: string;
  label: string;
  clothId: string;
  clothName: string;
  count: number;
  /** Cut size of one, mm. */
  widthMm: number;
  lengthMm: number;
  /** Threads along which its length lies: `warp` along the bolt, `weft` across it, `free` either. */
  grain: "warp" | "weft" | "free";
  why: string;
  /** It hangs on the cords and is lifted with the shade. */
  hangs: boolean;
}

/** Pieces beside the panels as they lie on one cloth: beside the panels of a layer where they fit, else beyond them. */
export interface TrimBolt {
  clothId: string;
  clothName: string;
  usableWidthMm: number;
  /** Layer of the same cloth, beside whose panels they lie. */
  beside?: Layer;
  lays: Lay[];
  /** Where the cloth of the layer ends, and what the pieces take beyond it, mm. */
  fromMm: number;
  lengthMm: number;
  /** To buy of a cloth that no layer is cut from, mm; where one is, that has what is bought. */
  buyMm?: number;
}

/** A band as it shows on the finished shade, mm from the left edge and down from the top line. */
export interface Band {
  part: "left" | "right" | "top" | "bottom" | "bottom-band";
  /** Its corners with its neighbours are mitred; otherwise those across lie between the sides. */
  mitred: boolean;
  clothId: string;
  clothName: string;
  /** In full light, `#rrggbb`. */
  colour: string;
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}

export type CornerPoint = readonly [outMm: number, downMm: number];

/** A line on a corner of the flat face, mm from the finished corner: out past the side edge, down past the hem line. */
export interface CornerLine {
  kind: "edge" | "crease" | "mitre" | "trim";
  label: string;
  from: CornerPoint;
  to: CornerPoint;
}

/** The bottom corner of the face laid flat, at the right-hand side; the left one is its mirror. */
export interface HemCorner {
  kind: "square" | "mitred";
  /** Cloth past the finished corner, mm: out to the side, down past the hem line. */
  outMm: number;
  downMm: number;
  lines: CornerLine[];
  /** Slant of the mitre from the hem line, degrees. */
  angleDeg?: number;
  /** Where the mitre ends inside, once folded: mm in from the side edge and up from the hem line. */
  insideMm?: CornerPoint;
}

/** A line to mark on a layer, measured from the cut bottom edge after hemming: from the finished hem up. */
export interface RibLine {
  row: number;
  /** Midway between this row and the next one above, in the front edge of the fold. */
  between?: true;
  /** On the finished shade, mm from the hem. */
  fromHemMm: number;
  /** On the lining (or on both layers) before the pockets are sewn, mm from the hem. */
  onLiningMm: number;
}

export interface ClothPlan {
  layers: LayerCut[];
  /** Pieces beside the layers: board cover, returns, bands, strips, sleeves. */
  trims: Trim[];
  trimBolts: TrimBolt[];
  bands: Band[];
  /** Bottom corner of the face. */
  corner: HemCorner;
  /** Pocket lines, one for each row, where ribs are asked for. */
  ribLines: RibLine[];
  /** Cut length of each rib, mm. */
  ribLengthMm?: number;
  /** Strips for pockets, where they are cut apart: count and size, mm. */
  strips?: { count: number; widthMm: number; lengthMm: number };
  /** Sleeves sewn over the cords, where those are enclosed: one along each column, and how far beside it its edges are sewn. */
  sleeves?: { count: number; widthMm: number; lengthMm: number; besideMm: number };
}
