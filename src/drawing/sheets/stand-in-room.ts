import type { ShadePlan } from "../../plan/index.ts";

/** Clear wall between two windows, mm. */
export const BETWEEN_MM = 350;

/** Where a shade stands in the drawing of its room: x along the wall, y down from the floor, mm. */
export interface Standing {
  shade: ShadePlan;
  /** Left finished edge and top line. */
  xMm: number;
  topMm: number;
  widthMm: number;
  heightMm: number;
  /** The wider of shade and opening. */
  widestMm: number;
  /** Its height above the floor is known. */
  measured: boolean;
}

/**
 * The windows of a room side by side in the order along the wall, on one floor. One whose height above the floor is
 * not known hangs level with the highest that is.
 */
export function standInRoom(shades: readonly ShadePlan[]): Standing[] {
  const known = shades.flatMap((shade) => shade.size.topAboveFloorMm ?? []);
  const tallest = Math.max(0, ...shades.map((shade) => shade.size.finishedLengthMm));
  const level = known.length > 0 ? Math.max(...known) : tallest;
  let xMm = 0;
  return shades.map((shade) => {
    const { finishedWidthMm, finishedLengthMm, openingWidthMm, topAboveFloorMm } = shade.size;
    const widestMm = Math.max(finishedWidthMm, openingWidthMm);
    const standing = {
      shade,
      xMm: xMm + (widestMm - finishedWidthMm) / 2,
      topMm: -(topAboveFloorMm ?? level),
      widthMm: finishedWidthMm,
      heightMm: finishedLengthMm,
      widestMm,
      measured: topAboveFloorMm !== undefined,
    };
    xMm += widestMm + BETWEEN_MM;
    return standing;
  });
}
