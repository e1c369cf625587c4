import type { Finding } from "../../figures/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { drapeKey } from "./drape-key.ts";

/** What was read from the cloth of a shade as it hangs, in the maker's units. */
export interface SurfaceRead {
  shadeId: string;
  key: string;
  findings: readonly Finding[];
}

/** The same for plans whose cloth tells the same. */
export function surfaceKey(plan: ShadePlan, units: UnitChoice): string {
  return `${plan.shadeId} ${JSON.stringify(units)} ${drapeKey(plan)}`;
}

const read = new Map<string, SurfaceRead>();

/** Keeps what was read of a shade last: it takes seconds, and paper says what the screen said. */
export function keepSurface(one: SurfaceRead): void {
  read.set(one.shadeId, one);
}

export function surfacesRead(): SurfaceRead[] {
  return [...read.values()];
}
