import { SWATCH_SIDE } from "../../job/index.ts";
import type { LayerCut } from "../../shade-plan/index.ts";

/** The pattern of a cloth by its place on it. */
export interface ClothPattern {
  /** Colour at a place of the cloth as `HangingCloth.clothMm` tells it, `#rrggbb`. */
  colourAt(xMm: number, yMm: number): string;
  /** Faces no longer than this show it, mm. */
  largestMm: number;
}

/** Repeats smaller than this blend to one colour in a picture, mm. */
export const LEAST_SHOWN_MM = 60;
/** Faces across a repeat at the least, and none smaller than this, mm. */
const FACES_A_REPEAT = 14;
const LEAST_FACE_MM = 16;
/** Where no photo shows it, a lozenge in the middle of each repeat stands for its motif: so large, and so much darker. */
const LOZENGE = 0.32;
const DARKER = 0.72;

/** The pattern of a layer where its cutting plan gives it; undefined where it has none that would be seen. */
export function clothPattern({
  colour,
  motif,
  swatch,
}: Pick<LayerCut, "colour" | "motif" | "swatch">): ClothPattern | undefined {
  if (motif === undefined || Math.min(motif.repeatXMm, motif.repeatYMm) < LEAST_SHOWN_MM) return undefined;
  const { repeatXMm, repeatYMm } = motif;
  const tile = swatch === undefined ? lozenge(colour) : swatchTile(swatch);
  return {
    largestMm: Math.max(LEAST_FACE_MM, Math.min(repeatXMm, repeatYMm) / FACES_A_REPEAT),
    colourAt: (xMm, yMm) => {
      const [x, y] = inRepeat(motif, xMm, yMm);
      return tile(x, y);
    },
  };
}

/** Shares of a repeat at a place of the cloth: every second column of a half drop lies half a repeat lower. */
export function inRepeat(
  { originXMm, originAlongMm, repeatXMm, repeatYMm, match }: NonNullable<LayerCut["motif"]>,
  xMm: number,
  yMm: number,
): [x: number, y: number] {
  const across = (xMm - originXMm) / repeatXMm;
  const column = Math.floor(across);
  const dropped = match === "half-drop" && Math.abs(column % 2) === 1 ? 0.5 : 0;
  const down = (yMm - originAlongMm) / repeatYMm - dropped;
  return [across - column, down - Math.floor(down)];
}

/** A lozenge in the middle of the repeat, the cloth's own colour round it. */
export function lozenge(colour: string): (x: number, y: number) => string {
  const dark = darker(colour);
  return (x, y) => (Math.abs(x - 0.5) + Math.abs(y - 0.5) < LOZENGE ? dark : colour);
}

function swatchTile(swatch: string): (x: number, y: number) => string {
  return (x, y) => {
    const [column, row] = [x, y].map((share) =>
      Math.min(SWATCH_SIDE - 1, Math.floor(share * SWATCH_SIDE)),
    ) as [number, number];
    const at = 6 * (row * SWATCH_SIDE + column);
    return `#${swatch.slice(at, at + 6)}`;
  };
}

function darker(colour: string): string {
  const channels = [1, 3, 5].map((at) => Math.round(Number.parseInt(colour.slice(at, at + 2), 16) * DARKER));
  return `#${channels.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}
