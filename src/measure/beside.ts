import { type Figure, figureRuleOf } from "../figures/index.ts";
import type { Beside } from "../job/index.ts";
import { cite } from "../sources/index.ts";
import type { MeasuredShade } from "./measure-reads.ts";

interface Side {
  side: "left" | "right";
  /** Another shade stands there, so that the corner's angle is halved. */
  halved: boolean;
}

const REACH = figureRuleOf<Side>()({
  id: ({ side }) => `measure.reach-${side}`,
  label: ({ side }) => `Reach beyond the opening, ${side}`,
  symbol: ({ side }) => (side === "left" ? "r_l" : "r_r"),
  unit: "mm",
  formula: ({ halved }) => (halved ? "w − g / 2 − d / tan(a)" : "w − g − d / tan(a)"),
  inputs: ({ side, halved }) => ({
    w: ["mm", "wall between the opening and the corner", `opening/${side}`],
    g: ["mm", "gap kept to the neighbour", "mount/neighbourGapMm"],
    d: ["mm", "board and folds stand out from the wall", "mount/foldRoomMm", "board/section"],
    a: ["ratio", halved ? "half of the corner’s angle, radians" : "the corner’s angle, radians"],
  }),
  cite: cite("geometry", "each keeps to its own side of the line that halves the corner"),
  note: "a corner that opens away from the room asks for nothing",
  compute: ({ w = 0, g = 0, d = 0, a = 0 }, { halved }) => w - (halved ? g / 2 : g) - d / Math.tan(a),
});

/**
 * How far beyond the edge of the opening the shade may reach at one side, mm; negative where it must stay inside it;
 * undefined where nothing stands there.
 *
 * Two shades that meet in a corner stay on their own side of the line that halves its angle α: what stands out d from
 * the wall keeps d / tan(α/2) from the corner. A bare wall beside it only leans in where the corner is sharper than
 * square: d / tan α.
 */
export function reach(shade: MeasuredShade, side: "left" | "right"): Figure | undefined {
  const beside = shade.opening[side];
  if (beside === undefined) return undefined;
  const { neighbourGapMm, foldRoomMm } = shade.making.mount;
  const given = {
    w: beside.wallMm,
    g: neighbourGapMm,
    d: shade.board.depthMm + foldRoomMm,
    a: cornerRad(beside),
  };
  return REACH.figure(given, { side, halved: beside.shade });
}

/** How far beyond the edge of the opening the shade is to reach where nothing stands there, mm; negative within it. */
export function wishMm({ mount, making }: MeasuredShade): number {
  return mount === "outside" ? making.mount.overlapSideMm : -making.mount.insideWidthOffMm / 2;
}

/** The angle that counts, no wider than square on: beyond that d / tan would turn into room that is not there. */
function cornerRad({ angleDeg, shade }: Beside): number {
  const counted = shade ? Math.min(angleDeg, 180) / 2 : Math.min(angleDeg, 90);
  return (counted * Math.PI) / 180;
}
