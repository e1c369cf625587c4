export { firstLengths } from "./first-lengths.ts";
export * from "./problem.ts";
export { proveLengths } from "./prove.ts";
export { LengthsSearch, solveLengths } from "./search.ts";
export { verifyLengths } from "./verify.ts";
