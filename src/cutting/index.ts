export * from "./cloth/index.ts";
export * from "./lengths/index.ts";
export { solveWithHighs } from "./solve-with-highs.ts";
export type { SolveWhole, WholeAnswer, WholeProgramme } from "./whole-programme.ts";
