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
}

/** Where a panel lies on the bolt: x across the cloth from one selvedge, y along it, mm. */
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
  /** Flat size of the joined layer before hemming, mm. */
  cutWidthMm: number;
  cutLengthMm: number;
  /** Cut length raised to whole repeats, where the pattern asks for it, mm. */
  repeatLengthMm: number;
  usableWidthMm: number;
  /** Drops off the bolt, side by side in the joined layer or shared by two narrow side panels. */
  widths: number;
  panels: Panel[];
  lays: Lay[];
  /** Length that leaves the bolt, mm, and the same raised to the step in which the cloth is sold. */
  lengthMm: number;
  buyMm: number;
  /** How the cut size is made up: what was added to the finished size, mm. */
  makeUp: { label: string; widthMm: number; lengthMm: number }[];
  repeatMm?: number;
  match?: "straight" | "half-drop";
}

/** A line to mark on a layer, measured from the cut bottom edge after hemming: from the finished hem up. */
export interface RibLine {
  row: number;
  /** On the finished shade, mm from the hem. */
  fromHemMm: number;
  /** On the lining (or on both layers) before the pockets are sewn, mm from the hem. */
  onLiningMm: number;
}

export interface ClothPlan {
  layers: LayerCut[];
  /** Pocket lines, one for each row, where ribs are asked for. */
  ribLines: RibLine[];
  /** Cut length of each rib, mm. */
  ribLengthMm?: number;
  /** Strips for pockets, where they are cut apart: count and size, mm. */
  strips?: { count: number; widthMm: number; lengthMm: number };
  /** Sleeves sewn over the cords, where those are enclosed: one along each column, and how far beside it its edges are sewn. */
  sleeves?: { count: number; widthMm: number; lengthMm: number; besideMm: number };
}
