import { useEffect, useState } from "react";
import { surfacesRead } from "../picture/surface-read.ts";
import { useJob } from "../state/fields.ts";
import { usePreferences } from "../state/preferences.ts";
import { makingHangsMs, planningHangsMs } from "../workers/hangs.ts";
import { planningWorker } from "../workers/planning.ts";
import type { PageCounts } from "./planning-worker.ts";

/** Counting sets every page: it waits until the maker has stopped typing. */
const QUIET_MS = 700;

/** Of a larger job nobody waits for a count: it is told while the workbook is set. */
const MOST_WINDOWS = 12;

/** A sentence on letters of the job that no page can show; undefined where all can, and until that is known. */
export function useLettersLacking(): string | undefined {
  const job = useJob();
  const [said, setSaid] = useState<string>();
  useEffect(
    () =>
      askedOnceQuiet(async (worker) =>
        setSaid(await worker.ask((service) => service.lettersLacking(job), planningHangsMs(job))),
      ),
    [job],
  );
  return said;
}

/**
 * Pages of every set of this shade, or of the job; undefined until they are counted, and anew after every change.
 * `never` where there are too many to count beforehand.
 */
export function usePageCounts(shadeId?: string): PageCounts | "never" | undefined {
  const job = useJob();
  const windows = job.rooms.reduce((sum, room) => sum + room.windows.length, 0);
  const isMany = shadeId === undefined && windows > MOST_WINDOWS;
  const paper = usePreferences((preferences) => preferences.paper);
  const [counts, setCounts] = useState<PageCounts>();
  useEffect(() => {
    setCounts(undefined);
    if (isMany) return;
    const shades = shadeId === undefined ? undefined : [shadeId];
    return askedOnceQuiet(async (worker) =>
      setCounts(
        await worker.ask((service) => service.pages(job, paper, shades, surfacesRead()), makingHangsMs(job)),
      ),
    );
  }, [job, paper, shadeId, isMany]);
  return isMany ? "never" : counts;
}

/**
 * Asks a worker of its own once the maker has been quiet; an answer that fails is left out: the sets can be printed all
 * the same, and a page says at its foot what it cannot show.
 * @returns ends the asking
 */
function askedOnceQuiet(ask: (worker: ReturnType<typeof planningWorker>) => Promise<void>): () => void {
  const worker = planningWorker();
  const later = setTimeout(
    () =>
      ask(worker)
        .catch(() => {})
        .finally(() => worker.end()),
    QUIET_MS,
  );
  return () => {
    clearTimeout(later);
    worker.end();
  };
}
