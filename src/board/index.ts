export { BOARD_READS } from "./board-input.ts";
export { planBoard } from "./plan-board.ts";
