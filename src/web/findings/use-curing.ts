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
    const tryFrom = (index: number): (() => void) =>
      whenIdle(() => {
        const remedy = remedies[index];
        if (remedy === undefined) return setCuring(found);
        if (cures(remedy)) found.add(remedy.label);
        cancel = tryFrom(index + 1);
      });
    let cancel = tryFrom(0);
    return () => cancel();
  }, [remedies, cures]);
  return remedies.filter(({ label }) => curing.has(label));
}
