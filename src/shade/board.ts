import type { BoardPoint } from "./lift.ts";

export interface Bracket {
  number: number;
  xMm: number;
}

export interface BoardPlan {
  sectionId: string;
  sectionName: string;
  lengthMm: number;
  depthMm: number;
  thicknessMm: number;
  /** Left end of the board, mm from the left finished edge. */
  leftMm: number;
  eyes: BoardPoint[];
  /** Brackets under an outside-mounted board; screws up through the board for an inside mount. */
  fixing: "brackets" | "screwed-up";
  brackets: Bracket[];
  /** Screws up through the board: from the wall edge, mm, where a tube under the board takes the middle. */
  screwsZMm?: number;
  screws: { count: number; lengthMm: number; into: string };
  barLengthMm?: number;
  barName?: string;
  /** Weight, shade and hand together that the fixings must carry, N (before any tug factor). */
  loadN: number;
}
