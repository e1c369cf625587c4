export { planByHand } from "./by-hand.ts";
export * from "./problem.ts";
export { ClothSearch, solveCloth } from "./search.ts";
export type { ClothSearching } from "./searching.ts";
export { startClothSearch } from "./start-search.ts";
export { verifyCloth } from "./verify.ts";
