import { cite, sourced } from "../../sources/index.ts";
import type { CordGeometry } from "./cord-geometry.ts";

/** What a grown person reaches with both hands, without a step. */
export const CLEAT_REACH = sourced(
  2000,
  "mm",
  cite("our-choice", "a cleat is wound with both hands, without a step"),
);

/** Why no cord is ever wound on the cleat where it is planned; undefined where nothing speaks against it. */
export function cleatAstray({ pulls, topAboveFloorMm }: CordGeometry): string | undefined {
  for (const { cleatAboveFloorMm, exitBelowTopMm, from } of pulls) {
    if (topAboveFloorMm !== undefined && cleatAboveFloorMm >= topAboveFloorMm - exitBelowTopMm)
      return `The cleat is planned above the ${from} that its cord comes ${from === "lock" ? "out of" : "over"}, where no cord is wound`;
    if (cleatAboveFloorMm > CLEAT_REACH.value)
      return "The cleat is planned higher than hands reach, so that the cord stays off it";
  }
  return undefined;
}
