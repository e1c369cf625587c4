import type { LayerCut, Trim } from "./cloth.ts";

/** More panels than any layer is joined from. */
const MOST_PANELS = 20;

/** A layer that its cloth cannot give: a piece of it is wider than the bolt, or it would be joined from strips. */
export function layerCannotBeCut({
  turned,
  panels,
  usableWidthMm,
}: Pick<LayerCut, "turned" | "panels" | "usableWidthMm">): boolean {
  return (
    !turned && (panels.length > MOST_PANELS || panels.some(({ widthMm }) => widthMm > usableWidthMm + 1))
  );
}

/** What one of these pieces takes across the bolt, the way it may lie that takes least, mm. */
export function acrossBoltMm({ grain, widthMm, lengthMm }: Trim): number {
  return grain === "weft" ? lengthMm : grain === "warp" ? widthMm : Math.min(widthMm, lengthMm);
}

/** A piece that its cloth is too narrow for in every way that it may lie. */
export function trimCannotBeCut(trim: Trim, usableWidthMm: number): boolean {
  return acrossBoltMm(trim) > usableWidthMm + 0.5;
}
