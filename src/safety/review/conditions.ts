import type { Condition } from "../rules/rule.ts";
import type { CordGeometry } from "./cord-geometry.ts";

/** Why a rule does not speak of this shade; undefined where all of its conditions hold. */
export function unmetCondition(
  conditions: readonly Condition[] | undefined,
  geometry: CordGeometry,
): string | undefined {
  for (const condition of conditions ?? []) {
    const why = CONDITIONS[condition.if](geometry, "mm" in condition ? condition.mm : 0);
    if (why !== undefined) return why;
  }
  return undefined;
}

/** What each word of the vocabulary asks: the reason why it does not hold, or nothing. */
const CONDITIONS: Record<Condition["if"], (geometry: CordGeometry, limitMm: number) => string | undefined> = {
  "installation-height-known": ({ topAboveFloorMm }) =>
    topAboveFloorMm === undefined
      ? "The height of the window above the floor is not known: the rows for unknown heights are read instead."
      : undefined,
  "installation-height-unknown": ({ topAboveFloorMm }) =>
    topAboveFloorMm === undefined
      ? undefined
      : "The height of the window above the floor is known: the rows for known heights are read instead.",
  "blind-height-at-most": ({ blindHeightMm }, limitMm) =>
    blindHeightMm > limitMm ? "Written for lower shades." : undefined,
  "blind-height-over": ({ blindHeightMm }, limitMm) =>
    blindHeightMm > limitMm ? undefined : "Written for higher shades.",
  "device-with-breakaway": ({ loop }) =>
    loop?.device === "breakaway" ? undefined : "No loop on this lift breaks away.",
};
