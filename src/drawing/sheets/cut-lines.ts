import type { Bolt, BoltPlan, Cut, Rect } from "../../cutting/index.ts";

/** One cut as it runs on the bolt, from edge to edge of the sheet that it goes through, mm. */
export interface CutLine {
  cut: Cut;
  from: readonly [xMm: number, yMm: number];
  to: readonly [xMm: number, yMm: number];
  /** The sheet is as wide as the bolt: what comes off is a whole length of it. */
  wholeWidth: boolean;
}

/** Every cut with its two ends: follows the sheets from the bolt to the pieces. */
export function cutLines({ widthMm, lengthMm }: Bolt, { cuts, usedMm }: BoltPlan): CutLine[] {
  const sheets = new Map<number, Rect>([
    [0, { xMm: 0, yMm: 0, widthMm, lengthMm: lengthMm ?? Math.max(usedMm, ...cuts.map(({ atMm }) => atMm)) }],
  ]);
  return cuts.flatMap((cut): CutLine[] => {
    const sheet = sheets.get(cut.sheet);
    if (sheet === undefined) return [];
    const { xMm, yMm } = sheet;
    if (cut.direction === "across") {
      sheets.set(cut.first, { ...sheet, lengthMm: cut.atMm - yMm });
      sheets.set(cut.second, { ...sheet, yMm: cut.atMm, lengthMm: yMm + sheet.lengthMm - cut.atMm });
    } else {
      sheets.set(cut.first, { ...sheet, widthMm: cut.atMm - xMm });
      sheets.set(cut.second, { ...sheet, xMm: cut.atMm, widthMm: xMm + sheet.widthMm - cut.atMm });
    }
    const across = cut.direction === "across";
    return [
      {
        cut,
        from: across ? [xMm, cut.atMm] : [cut.atMm, yMm],
        to: across ? [xMm + sheet.widthMm, cut.atMm] : [cut.atMm, yMm + sheet.lengthMm],
        wholeWidth: across && sheet.widthMm === widthMm,
      },
    ];
  });
}
