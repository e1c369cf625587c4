import { proxy, type Remote, wrap } from "comlink";
import { create } from "zustand";
import type { Job } from "../../job/index.ts";
import type { Saving } from "../../plan/index.ts";
import type { CuttingProgress, CuttingService } from "./cutting-worker.ts";

export interface CuttingState {
  /** The job that the progress belongs to. */
  job?: Job;
  progress?: CuttingProgress;
  state: "idle" | "first" | "looking" | "ended" | "failed";
  savings: { state: "idle" | "looking" | "done" | "failed"; found: Saving[] };
}

const IDLE: CuttingState = { state: "idle", savings: { state: "idle", found: [] } };

export const useCuttingStore = create<CuttingState>()(() => IDLE);

const { setState: set, getState: get } = useCuttingStore;

interface Running {
  worker: Worker;
  service: Remote<CuttingService>;
}

let running: Running | undefined;
let saving: Worker | undefined;

function newWorker(): Worker {
  return new Worker(new URL("./cutting-worker.ts", import.meta.url), { type: "module" });
}

/** Cuts a job anew; with `look` goes on to better plans until it is stopped. What was running for an older state ends. */
export async function startCutting(job: Job, look: boolean): Promise<void> {
  running?.worker.terminate();
  saving?.terminate();
  const worker = newWorker();
  const own: Running = { worker, service: wrap<CuttingService>(worker) };
  running = own;
  // The last plan stays on the screen until the next is there.
  set({ state: look ? "looking" : "first", savings: { state: "idle", found: [] } });
  const tell = (progress: CuttingProgress) => {
    if (running !== own) return;
    set({ job, progress, state: progress.ended === undefined ? "looking" : "ended" });
  };
  try {
    await own.service.search(job, look, proxy(tell));
  } catch {
    if (running === own) set({ state: "failed" });
  } finally {
    worker.terminate();
    if (running === own) running = undefined;
  }
}

/** Ends the search; the best plan so far stays. */
export function stopCutting(): void {
  void running?.service.stop();
}

export function leaveCutting(): void {
  running?.worker.terminate();
  saving?.terminate();
  running = undefined;
  saving = undefined;
  set(IDLE, true);
}

/** Tries the usual ways to take less cloth, each on the whole job. */
export async function findSavings(job: Job): Promise<void> {
  saving?.terminate();
  const worker = newWorker();
  saving = worker;
  set({ savings: { state: "looking", found: [] } });
  const tell = (found: Saving) => {
    if (saving === worker) set({ savings: { state: "looking", found: [...get().savings.found, found] } });
  };
  const end = (state: "done" | "failed") => {
    if (saving === worker) set({ savings: { ...get().savings, state } });
  };
  try {
    const { job: cutJob, progress } = get();
    const known = cutJob === job ? progress?.cutting : undefined;
    await wrap<CuttingService>(worker).savings(job, known, proxy(tell));
    end("done");
  } catch {
    end("failed");
  } finally {
    worker.terminate();
  }
}
