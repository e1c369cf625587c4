import { create } from "zustand";
import type { Job } from "../../job/index.ts";
import type { CuttingPlan } from "../../plan/index.ts";
import type { PaperKind, PrintSet, WorkbookProgress } from "../../workbook/index.ts";
import { useCuttingStore } from "../cutting/cutting-store.ts";
import { download, fileNameOf } from "../persistence/job-file.ts";
import { surfacesRead } from "../picture/surface-read.ts";
import { makingHangsMs } from "../workers/hangs.ts";
import type { KeptWorker } from "../workers/kept-worker.ts";
import { planningWorker } from "../workers/planning.ts";
import type { PlanningService } from "./planning-worker.ts";

export type WorkbookMaking =
  | { state: "idle" }
  | { state: "making"; done: number; total: number; pages: number }
  | { state: "done"; name: string; pages: number }
  | { state: "failed"; reason: string };

export const useMaking = create<WorkbookMaking>()(() => ({ state: "idle" }) as WorkbookMaking);

const tell = (making: WorkbookMaking) => useMaking.setState(making, true);

let worker: KeptWorker<PlanningService> | undefined;

/** Sets the workbook off the page's thread and hands it to the downloads. */
export async function makeAndDownload(
  job: Job,
  paper: PaperKind,
  sets: readonly PrintSet[],
  shade?: { id: string; name: string },
): Promise<void> {
  stopMaking();
  const own = planningWorker();
  worker = own;
  let pages = 0;
  tell({ state: "making", done: 0, total: 1, pages });
  const onProgress = (progress: WorkbookProgress) => {
    pages = progress.pages;
    if (worker === own) tell({ state: "making", ...progress });
  };
  const shadeIds = shade === undefined ? undefined : [shade.id];
  const seen = shade === undefined ? cuttingSeen(job) : undefined;
  try {
    const bytes = await own.ask(
      (service, hearing) =>
        service.workbook(job, paper, [...sets], shadeIds, hearing(onProgress), seen, surfacesRead()),
      makingHangsMs(job),
    );
    if (worker !== own) return;
    const name = fileNameOf(shade === undefined ? job.name : `${job.name} ${shade.name}`, ".pdf");
    download(new Blob([bytes as Uint8Array<ArrayBuffer>], { type: "application/pdf" }), name);
    tell({ state: "done", name, pages });
  } catch (error) {
    if (worker === own)
      tell({ state: "failed", reason: error instanceof Error ? error.message : String(error) });
  } finally {
    own.end();
    if (worker === own) worker = undefined;
  }
}

/** The cutting plan that the maker has looked at, where it is of the job as it stands: the tickets are its own. */
function cuttingSeen(job: Job): CuttingPlan | undefined {
  const { job: known, progress } = useCuttingStore.getState();
  return known === job ? progress?.cutting : undefined;
}

/** Stops a workbook on the way. */
export function stopMaking(): void {
  worker?.end();
  worker = undefined;
  tell({ state: "idle" });
}
