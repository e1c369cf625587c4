import { type CutApart, firstFit } from "../shade-plan/index.ts";
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
  if (pieces.some(({ widthMm }) => widthMm > usableMm + FIT_SLACK)) return undefined;
  const { places, drops } = firstFit(
    pieces.map(({ widthMm }) => widthMm),
    usableMm,
  );
  let joinedXMm = 0;
  const panels = pieces.map((piece, i): JoinedPanel => {
    const { drop = 0, xMm: boltXMm = 0 } = places[i] ?? {};
    const panel = { ...piece, full: false, drop, joinedXMm, boltXMm, columnsOn: 0 };
    joinedXMm += piece.widthMm - 2 * seamMm;
    return panel;
  });
  return { panels, drops };
}
