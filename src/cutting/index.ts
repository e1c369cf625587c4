export * from "./cloth/index.ts";
export * from "./lengths/index.ts";
export { NEVER, type ShouldStop } from "./should-stop.ts";
export { solveWithHighs } from "./solve-with-highs.ts";
export type { SolveWhole, WholeAnswer, WholeProgramme } from "./whole-programme.ts";
