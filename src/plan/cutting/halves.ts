import type { Cut, Rect } from "../../cutting/index.ts";

/** The two sheets that one cut makes of one: up to it, and beyond it. */
export function halves<S extends Rect>(
  sheet: S,
  { direction, atMm }: Pick<Cut, "direction" | "atMm">,
): [S, S] {
  if (direction === "across") {
    const lengthMm = atMm - sheet.yMm;
    return [
      { ...sheet, lengthMm },
      { ...sheet, yMm: atMm, lengthMm: sheet.lengthMm - lengthMm },
    ];
  }
  const widthMm = atMm - sheet.xMm;
  return [
    { ...sheet, widthMm },
    { ...sheet, xMm: atMm, widthMm: sheet.widthMm - widthMm },
  ];
}
