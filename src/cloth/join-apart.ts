import type { CutApart } from "../shade-plan/index.ts";
import { FIT_SLACK } from "../units/index.ts";
import type { Joined, JoinedPanel } from "./joins.ts";

/**
 * Pieces of a face that is cut apart, out of as few drops as laying the widest first takes, side by side in each.
 * Undefined where one is wider than the cloth: it would need a join within it.
 * Their widths are those cut, with their seams.
 */
export function joinApart(
  pieces: readonly CutApart[],
  { usableMm, seamMm }: { usableMm: number; seamMm: number },
): Joined | undefined {
  const usedMm: number[] = [];
  const places = new Map<CutApart, { drop: number; boltXMm: number }>();
  for (const piece of pieces.toSorted((a, b) => b.widthMm - a.widthMm)) {
    if (piece.widthMm > usableMm + FIT_SLACK) return undefined;
    const at = usedMm.findIndex((used) => used + piece.widthMm <= usableMm + FIT_SLACK);
    const drop = at < 0 ? usedMm.length : at;
    const boltXMm = usedMm[drop] ?? 0;
    usedMm[drop] = boltXMm + piece.widthMm;
    places.set(piece, { drop, boltXMm });
  }
  let joinedXMm = 0;
  const panels = pieces.map((piece): JoinedPanel => {
    const { drop = 0, boltXMm = 0 } = places.get(piece) ?? {};
    const panel = { ...piece, full: false, drop, joinedXMm, boltXMm, columnsOn: 0 };
    joinedXMm += piece.widthMm - 2 * seamMm;
    return panel;
  });
  return { panels, drops: usedMm.length };
}
