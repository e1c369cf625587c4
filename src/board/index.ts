export type { BoardInput } from "./board-input.ts";
export { type BoardLoads, boardLoads, fixingLoads, type PointLoad } from "./board-loads.ts";
export { planBoard } from "./plan-board.ts";
