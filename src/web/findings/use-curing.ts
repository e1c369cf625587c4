import { useEffect, useState } from "react";
import type { Remedy } from "../../figures/index.ts";
import { whenIdle } from "../frame/when-idle.ts";

/**
 * The remedies that cure, as trying them shows one by one in idle moments: each takes as long as a plan. Until then
 * those stand that cured before the last edit, so that nothing flickers while one types.
 */
export function useCuring(
  remedies: readonly Remedy[],
  cures: (remedy: Remedy) => boolean,
): readonly Remedy[] {
  const [curing, setCuring] = useState<ReadonlySet<string>>(new Set());
  useEffect(() => {
    const found = new Set<string>();
    let cancel = () => {};
    let left = false;
    // What a field takes is known to the job's schema, which comes after the first screen.
    const tryAll = async () => {
      const { isWithinFields } = await import("../state/job-door.ts");
      const tryFrom = (index: number): (() => void) =>
        whenIdle(() => {
          const remedy = remedies[index];
          if (remedy === undefined) return setCuring(found);
          if (isWithinFields(remedy) && cures(remedy)) found.add(remedy.label);
          cancel = tryFrom(index + 1);
        });
      if (!left) cancel = tryFrom(0);
    };
    void tryAll();
    return () => {
      left = true;
      cancel();
    };
  }, [remedies, cures]);
  return remedies.filter(({ label }) => curing.has(label));
}
