import { useEffect, useState } from "react";
import type { Remedy } from "../../figures/index.ts";
import { whenIdle } from "../frame/when-idle.ts";
import { isWithinFields } from "../state/job-door.ts";

/** The remedy with what it comes to, once the job is planned with it; undefined where it does not cure. */
export type ProveRemedy = (remedy: Remedy) => Remedy | undefined;

/**
 * The remedies that cure, as trying them shows one by one in idle moments: each takes as long as a plan. Until then
 * those stand that cured before the last edit, so that nothing flickers while one types.
 */
export function useCuring(remedies: readonly Remedy[], prove: ProveRemedy): readonly Remedy[] {
  const [curing, setCuring] = useState<ReadonlyMap<string, Remedy>>(new Map());
  useEffect(() => {
    const found = new Map<string, Remedy>();
    let cancel = () => {};
    const tryFrom = (index: number): (() => void) =>
      whenIdle(() => {
        const remedy = remedies[index];
        if (remedy === undefined) return setCuring(found);
        const proven = isWithinFields(remedy) ? prove(remedy) : undefined;
        if (proven !== undefined) found.set(remedy.label, proven);
        cancel = tryFrom(index + 1);
      });
    cancel = tryFrom(0);
    return () => cancel();
  }, [remedies, prove]);
  // Of an edit that moved windows the patch is the present one, whatever was proven of it before.
  return remedies.flatMap((remedy) => {
    const proven = curing.get(remedy.label);
    return proven === undefined ? [] : [{ ...proven, patch: remedy.patch }];
  });
}
