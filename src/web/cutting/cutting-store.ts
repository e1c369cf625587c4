import { create } from "zustand";
import type { Job } from "../../job/index.ts";
import type { KnownCloth, Saving } from "../../plan/index.ts";
import { makingHangsMs } from "../workers/hangs.ts";
import { KeptWorker } from "../workers/kept-worker.ts";
import type { CuttingProgress, CuttingService } from "./cutting-worker.ts";

export interface CuttingState {
  /** The job that the progress belongs to. */
  job?: Job;
  progress?: CuttingProgress;
  state: "idle" | "first" | "looking" | "ended" | "failed";
  /** `of` is the job that they were looked for. */
  savings: { state: "idle" | "looking" | "done" | "failed"; found: Saving[]; of?: Job };
}

const IDLE: CuttingState = { state: "idle", savings: { state: "idle", found: [] } };

export const useCuttingStore = create<CuttingState>()(() => IDLE);

const { setState: set, getState: get } = useCuttingStore;

let running: KeptWorker<CuttingService> | undefined;
let saving: KeptWorker<CuttingService> | undefined;

function newWorker(): KeptWorker<CuttingService> {
  return new KeptWorker(
    () => new Worker(new URL("./cutting-worker.ts", import.meta.url), { type: "module" }),
  );
}

/** How the rest of a cloth was to be cut before cuts were made: the next search begins with it. */
let known: KnownCloth[] = [];

export function goOnFrom(still: KnownCloth): void {
  known = [still];
}

/** Cuts a job anew; with `look` goes on to better plans until it is stopped. What was running for an older state ends. */
export async function startCutting(job: Job, look: boolean): Promise<void> {
  running?.end();
  // Edits are waited out before a plan is begun: savings may have been asked for in between, of this very job.
  const { savings } = get();
  const keptSavings = savings.of === job ? savings : IDLE.savings;
  if (keptSavings !== savings) endSavings();
  const own = newWorker();
  running = own;
  const before = known;
  known = [];
  // The last plan stays on the screen until the next is there.
  set({ state: look ? "looking" : "first", savings: keptSavings });
  const tell = (progress: CuttingProgress) => {
    if (running !== own) return;
    const before = get();
    const best = before.job === job && before.progress ? betterOf(before.progress, progress) : progress;
    set({ job, progress: best, state: progress.ended === undefined ? "looking" : "ended" });
  };
  try {
    await own.ask((service, hearing) => service.search(job, look, before, hearing(tell)), makingHangsMs(job));
  } catch {
    if (running === own) set({ state: "failed" });
  } finally {
    own.end();
    if (running === own) running = undefined;
  }
}

/** A search begun anew, because its worker died or it was asked for again, starts behind the plan that is there. */
function betterOf(known: CuttingProgress, now: CuttingProgress): CuttingProgress {
  if (costOf(now) <= costOf(known)) return now;
  const { ended: _, ...best } = known;
  return { ...best, tries: now.tries, ...(now.ended === undefined ? {} : { ended: now.ended }) };
}

/** Of all cloths; infinite where one has no plan. */
function costOf({ cutting }: CuttingProgress): number {
  return cutting.cloths.reduce(
    (sum, { answer }) => sum + ("bolts" in answer ? answer.cost : Number.POSITIVE_INFINITY),
    0,
  );
}

/** Ends the search; the best plan so far stays. */
export function stopCutting(): void {
  void running?.ask((service) => service.stop()).catch(() => {});
}

export function leaveCutting(): void {
  running?.end();
  running = undefined;
  endSavings();
  set(IDLE, true);
}

/** Ends the look for savings: what was ended on purpose has not failed. */
function endSavings(): void {
  const ending = saving;
  saving = undefined;
  ending?.end();
}

/** Tries the usual ways to take less cloth, each on the whole job. */
export async function findSavings(job: Job): Promise<void> {
  endSavings();
  const worker = newWorker();
  saving = worker;
  const begun: CuttingState["savings"] = { state: "looking", found: [], of: job };
  set({ savings: begun });
  const tell = (found?: Saving) => {
    if (found && saving === worker) set({ savings: { ...begun, found: [...get().savings.found, found] } });
  };
  const end = (state: "done" | "failed") => {
    if (saving === worker) set({ savings: { ...get().savings, state } });
  };
  try {
    const { job: cutJob, progress } = get();
    const known = cutJob === job ? progress?.cutting : undefined;
    await worker.ask((service, hearing) => {
      // Asked again, the ways are tried from the first.
      set({ savings: begun });
      return service.savings(job, known, hearing(tell));
    }, makingHangsMs(job));
    end("done");
  } catch {
    end("failed");
  } finally {
    worker.end();
    if (saving === worker) saving = undefined;
  }
}
