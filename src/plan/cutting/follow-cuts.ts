import type { Bolt, BoltPlan, Cut, Leaf, Rect } from "../../cutting/index.ts";
import { halves } from "./halves.ts";

/** One cut with the sheet that it goes through, as that lies on the bolt; what it leaves, and what of it is done. */
export interface FollowedCut {
  cut: Cut;
  sheet: Rect;
  /** Measure to mark, from the edge of the sheet nearer to the bolt’s beginning, mm; what remains beyond it. */
  markMm: number;
  beyondMm: number;
  /** It goes from selvedge to selvedge. */
  wholeWidth: boolean;
  /** It is the bolt itself, of which nobody has measured the length. */
  endless: boolean;
  /** What comes free with this cut: pieces, remnants, waste, the rest of the bolt. */
  frees: Leaf[];
}

/** Every cut in its order: follows the sheets from the bolt to the pieces. */
export function followCuts({ widthMm, lengthMm }: Bolt, { cuts, leaves, usedMm }: BoltPlan): FollowedCut[] {
  const isEndless = lengthMm === undefined;
  const farMm = lengthMm ?? cuts.reduce((most, { atMm }) => Math.max(most, atMm), usedMm);
  const leafOf = new Map(leaves.map((leaf) => [leaf.sheet, leaf]));
  const sheets = new Map<number, Rect & { endless: boolean }>([
    [0, { xMm: 0, yMm: 0, widthMm, lengthMm: farMm, endless: isEndless }],
  ]);
  return cuts.flatMap((cut): FollowedCut[] => {
    const sheet = sheets.get(cut.sheet);
    if (sheet === undefined) return [];
    const across = cut.direction === "across";
    const [one, other] = halves(sheet, cut);
    const [markMm, beyondMm] = across ? [one.lengthMm, other.lengthMm] : [one.widthMm, other.widthMm];
    sheets.set(cut.first, { ...one, endless: false });
    sheets.set(cut.second, other);
    const frees = [cut.first, cut.second].flatMap((id) => leafOf.get(id) ?? []);
    const wholeWidth = across && sheet.widthMm === widthMm;
    const { endless, ...area } = sheet;
    return [{ cut, sheet: area, markMm, beyondMm, wholeWidth, endless: endless && across, frees }];
  });
}
