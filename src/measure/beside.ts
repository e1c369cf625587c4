import type { WorkingBook } from "../figures/index.ts";
import type { Beside, ResolvedShade } from "../job/index.ts";
import { cite } from "../sources/index.ts";

/**
 * How far beyond the edge of the opening the shade may reach at one side, mm; negative where it must stay inside it;
 * undefined where nothing stands there.
 *
 * Two shades that meet in a corner stay on their own side of the line that halves its angle α: what stands out d from
 * the wall keeps d / tan(α/2) from the corner. A bare wall beside it only leans in where the corner is sharper than
 * square: d / tan α.
 */
export function reachMm(
  resolved: ResolvedShade,
  side: "left" | "right",
  book: WorkingBook,
): number | undefined {
  const beside = resolved.opening[side];
  if (beside === undefined) return undefined;
  const { neighbourGapMm, foldRoomMm } = resolved.making.mount;
  const halved = beside.shade;
  const angleRad = cornerRad(beside);
  return book.figure(`measure.reach-${side}`, {
    label: `Reach beyond the opening, ${side}`,
    symbol: side === "left" ? "r_l" : "r_r",
    unit: "mm",
    formula: halved ? "w − g / 2 − d / tan(a)" : "w − g − d / tan(a)",
    given: {
      w: [beside.wallMm, "mm", "wall between the opening and the corner"],
      g: [neighbourGapMm, "mm", "gap kept to the neighbour"],
      d: [resolved.board.depthMm + foldRoomMm, "mm", "board and folds stand out from the wall"],
      a: [angleRad, "ratio", halved ? "half of the corner’s angle, radians" : "the corner’s angle, radians"],
    },
    cite: cite("geometry", "each keeps to its own side of the line that halves the corner"),
    note: "a corner that opens away from the room asks for nothing",
    compute: ({ w, g, d, a }) => w - (halved ? g / 2 : g) - d / Math.tan(a),
  });
}

/** How far beyond the edge of the opening the shade is to reach where nothing stands there, mm; negative within it. */
export function wishMm({ mount, making }: ResolvedShade): number {
  return mount === "outside" ? making.mount.overlapSideMm : -making.mount.insideWidthOffMm / 2;
}

/** The angle that counts, no wider than square on: beyond that d / tan would turn into room that is not there. */
function cornerRad({ angleDeg, shade }: Beside): number {
  const counted = shade ? Math.min(angleDeg, 180) / 2 : Math.min(angleDeg, 90);
  return (counted * Math.PI) / 180;
}
