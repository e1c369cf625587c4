import { create } from "zustand";
import type { Job, JobIssue } from "../../job/index.ts";
import type { StoredJob } from "../persistence/database.ts";
import { readStoredJob } from "../persistence/job-shelf.ts";
import { newId } from "../persistence/new-id.ts";
import { openJobFile } from "../persistence/open-file.ts";
import { shelveJob } from "../persistence/session.ts";

type ImportState =
  | { state: "idle" }
  | { state: "reading"; name: string }
  | { state: "copied"; name: string }
  | { state: "refused"; name: string; issues: JobIssue[] };

export const useImport = create<ImportState>()(() => ({ state: "idle" }) as ImportState);

const tell = (state: ImportState) => useImport.setState(state, true);

export function dismissImport(): void {
  tell({ state: "idle" });
}

/** Opens a job file beside what the shelf holds: nothing on it, and nothing on the table, is overwritten. */
export async function importFile(file: File): Promise<void> {
  const name = file.name.slice(0, 80);
  tell({ state: "reading", name });
  const opened = await openJobFile(file);
  if (!opened.ok) return tell({ state: "refused", name, issues: opened.issues });
  const twin = await onShelf(opened.job.id);
  if (twin && JSON.stringify(twin.job) === JSON.stringify(opened.job)) {
    dismissImport();
    return goToJob(opened.job.id);
  }
  const job: Job = twin ? { ...opened.job, id: newId("job") } : opened.job;
  await shelveJob(job);
  tell(twin ? { state: "copied", name } : { state: "idle" });
  goToJob(job.id);
}

async function onShelf(id: string): Promise<StoredJob | undefined> {
  try {
    return await readStoredJob(id);
  } catch {
    return undefined;
  }
}

export function goToJob(jobId: string, windowId?: string): void {
  location.hash = windowId === undefined ? `/job/${jobId}` : `/job/${jobId}/${windowId}`;
}
