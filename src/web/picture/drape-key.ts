import { drapeInput } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";

const keys = new WeakMap<ShadePlan, string>();

/** The same for plans whose cloth hangs alike: they come anew with every edit, and most leave the cloth as it hangs. */
export function drapeKey(plan: ShadePlan): string {
  const known = keys.get(plan);
  if (known !== undefined) return known;
  const key = JSON.stringify(drapeInput(plan));
  keys.set(plan, key);
  return key;
}
