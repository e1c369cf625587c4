export { alignWindows, type RoomInLine } from "./align-windows.ts";
export { type JudgeMotifInput, judgeMotif } from "./judge-motif.ts";
export { type LineFiguresInput, lineFigures } from "./line-figures.ts";
export * from "./line-problem.ts";
export type { MotifStart } from "./motif.ts";
export { ALIGN_READS, type RoomInput, type RoomWindow } from "./room-window.ts";
export { compareScores } from "./score.ts";
export { solveLine } from "./solve.ts";
export { verifyLine } from "./verify.ts";
