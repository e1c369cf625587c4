import type { ShadePlan } from "./plan-types.ts";
import { type PlannedShade, sharesFigures } from "./shade-planner.ts";

/** What who goes through all shades of a job asks of each; it is kept. */
const KEPT = ["shadeId", "windowName", "roomId", "roomName", "style", "mount", "opening"];

/**
 * A shade whose plan is not kept: whatever is read of it is planned again, unless it was read just now. Plans are pure, so
 * it reads as if it were, but a part of it need not be the same object the next time.
 */
export function madeAgain({ shade }: PlannedShade, again: () => PlannedShade): PlannedShade {
  const own = {} as ShadePlan;
  // No function is made in here: each would hold all that this one has at hand, the plan that is not to be kept as well.
  for (const key of Object.keys(shade)) {
    const kept = KEPT.includes(key) ? Object.getOwnPropertyDescriptor(shade, key) : undefined;
    Object.defineProperty(own, key, kept ?? lateField(key, again));
  }
  sharesFigures(own, lateShade(again));
  return { shade: own, cost: lateCost(again) };
}

function lateField(key: string, again: () => PlannedShade): PropertyDescriptor {
  return { enumerable: true, configurable: true, get: () => Reflect.get(again().shade, key) };
}

function lateShade(again: () => PlannedShade): () => ShadePlan {
  return () => again().shade;
}

function lateCost(again: () => PlannedShade): PlannedShade["cost"] {
  return () => again().cost();
}
