import { acrossAtMm, alongHeadMm, type HeadShape } from "./head-line.ts";
import type { BoardPoint, Lift } from "./lift.ts";

export interface Bracket {
  number: number;
  xMm: number;
}

/** What one screw or plug takes: away from the wall, with what its bracket adds by prying, and along it, N. */
export interface ScrewLoad {
  pullN: number;
  shearN: number;
}

/**
 * What the board and its fixings are put to. Bend counts a hand that tugs; all the rest the heaviest of a tug, a steady
 * pull and a child that hangs on the shade.
 */
export interface BoardStrength {
  /** Pull at lock or drive by which strength is judged, N, and what makes it. */
  handN: number;
  hand: "tug" | "pull" | "child";
  /** Load on each fixing from the left, N: reactions of a continuous beam. */
  reactionsN: number[];
  /** Largest bend either way with a tug, where, and what is allowed, mm. */
  deflectionMm: number;
  deflectionAtMm: number;
  deflectionLimitMm: number;
  /** Largest stress of bending, and the mean strength of the wood where it is known, N/mm². */
  stressNPerMm2: number;
  ruptureNPerMm2?: number;
  /** On the hardest worked screw or plug: away from the wall, with what its bracket adds by prying, and along it, N. */
  pullN: number;
  shearN: number;
  /** The same with a tug alone. */
  tugged: ScrewLoad;
  /** Share of what one screw into wood may be put to, 1 at its limit. */
  screwShare?: number;
}

/** The board with what is screwed to it: what other stages read. */
export interface MountedBoard {
  sectionId: string;
  sectionName: string;
  lengthMm: number;
  /** Length to saw: longer where it lies on a slope. */
  cutMm: number;
  depthMm: number;
  thicknessMm: number;
  /** Left end of the board, mm from the left finished edge. */
  leftMm: number;
  eyes: BoardPoint[];
  /** Brackets under an outside-mounted board; screws up through the board for an inside mount. */
  fixing: "brackets" | "screwed-up";
  brackets: Bracket[];
  /** Screws up through the board: from the wall edge, mm, where a tube or the cords under the board take the middle. */
  screwsZMm?: number;
  screws: { count: number; lengthMm: number; into: string };
  barLengthMm?: number;
  barName?: string;
  /** Weight, shade and hand together that the fixings must carry, N (before any tug factor). */
  loadN: number;
}

/** The same with what the plan alone shows: how deep the stack before it is, and what it bears. */
export interface BoardPlan extends MountedBoard {
  /** The raised shade gathered up before and behind the front of the board, from front to back, mm. */
  stackDepthMm: number;
  /** Absent where one fixing alone holds it: then it is no beam. */
  strength?: BoardStrength | undefined;
}

/** What places on a board are told by. A board under a tube is level, whatever the head does. */
export interface BoardOnHead {
  size: HeadShape;
  board: Pick<MountedBoard, "leftMm">;
  lift: Pick<Lift, "takeUp">;
}

/** Along the board from its left end, seen from the room, to what lies over a place across the shade, mm: where it is marked. */
export function fromBoardEndMm({ size, board, lift }: BoardOnHead, xMm: number): number {
  return lift.takeUp === "tube" ? xMm - board.leftMm : alongHeadMm(size, board.leftMm, xMm);
}

/** The other way about: the place across the shade, mm. */
export function acrossOfBoardMm({ size, board, lift }: BoardOnHead, alongMm: number): number {
  return lift.takeUp === "tube" ? board.leftMm + alongMm : acrossAtMm(size, board.leftMm, alongMm);
}
