import { useEffect, useState } from "react";
import { drapeInput } from "../../drawing/index.ts";
import type { Finding } from "../../figures/index.ts";
import { beginHangWorker } from "../picture/begin-hang-worker.ts";
import { keepSurface, surfaceKey } from "../picture/surface-read.ts";
import { HANGS_MS } from "../workers/hangs.ts";
import { useShade } from "./shade-context.tsx";

/** Edits come in bursts, and pictures come first: the cloth is read when the maker pauses. */
const PAUSE_MS = 1500;
const NONE: readonly Finding[] = [];

/**
 * What is read from the cloth of the shade on the page, brought to rest in a worker: where it hangs otherwise than planned,
 * and how far its sides draw in. Nothing for folds whose section the plan itself solves, nor until it is worked out.
 *
 * @param isWanted whether it can be read: nothing is worked out for a section that is folded
 */
export function useSurfaceFindings(isWanted: boolean): readonly Finding[] {
  const { plan, job } = useShade();
  const { units } = job;
  const key = isWanted && plan.folds === undefined ? surfaceKey(plan, units) : undefined;
  const [known, setKnown] = useState<{ key: string; findings: readonly Finding[] }>();
  const isKnown = known !== undefined && known.key === key;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key tells when the cloth hangs otherwise
  useEffect(() => {
    if (key === undefined || isKnown) return;
    const input = { drape: drapeInput(plan), shadeId: plan.shadeId, units };
    const worker = beginHangWorker();
    const timer = setTimeout(() => {
      worker
        .ask((service) => service.surfaceFindings(input), HANGS_MS)
        // A worker that cannot be begun or that died is told of by itself; the picture says what it could not do.
        .then(
          (findings) => {
            keepSurface({ shadeId: plan.shadeId, key, findings });
            setKnown({ key, findings });
          },
          () => {},
        )
        .finally(() => worker.end());
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      worker.end();
    };
  }, [key, isKnown]);
  return isKnown ? known.findings : NONE;
}
