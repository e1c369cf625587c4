export { planBoard } from "./plan-board.ts";
