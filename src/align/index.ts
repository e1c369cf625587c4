export { alignWindows, type RoomInLine } from "./align-windows.ts";
export { judgeMotif } from "./judge-motif.ts";
export * from "./line-problem.ts";
export type { MotifStart } from "./motif.ts";
export type { RoomInput, RoomWindow } from "./room-window.ts";
export { compareScores } from "./score.ts";
export { solveLine } from "./solve.ts";
export { verifyLine } from "./verify.ts";
export { writeLine } from "./write-line.ts";
