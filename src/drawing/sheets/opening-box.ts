import type { DrawnRect } from "./shapes.ts";
import type { SheetInput } from "./sheet-input.ts";

/** The opening seen from the room, mm from the left finished edge and down from the top line; undefined where only the finished size was given. */
export function openingBox({ size }: SheetInput["shade"]): DrawnRect | undefined {
  if (size.openingTopMm === undefined) return undefined;
  return {
    x: size.openingLeftMm ?? (size.finishedWidthMm - size.openingWidthMm) / 2,
    y: size.openingTopMm,
    width: size.openingWidthMm,
    height: size.openingHeightMm,
  };
}
