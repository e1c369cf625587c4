export * from "./line-problem.ts";
export { compareScores } from "./score.ts";
export { solveLine } from "./solve.ts";
export { verifyLine } from "./verify.ts";
