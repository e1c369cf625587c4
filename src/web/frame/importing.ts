import { create } from "zustand";
import type { Job, JobIssue } from "../../job/index.ts";
import type { StoredJob } from "../persistence/database.ts";
import { download } from "../persistence/job-file.ts";
import { readAllStored, readStoredJob } from "../persistence/job-shelf.ts";
import { newId } from "../persistence/new-id.ts";
import { openJobFile } from "../persistence/open-file.ts";
import { shelveJob } from "../persistence/session.ts";
import { type OpenedShelf, SHELF_FILE_ENDING, shelfParts } from "../persistence/shelf-file.ts";
import { loadShelf } from "../shelf/shelf-state.ts";

export type ImportState =
  | { state: "idle" }
  | { state: "reading"; name: string }
  | { state: "copied"; name: string }
  | { state: "refused"; name: string; issues: JobIssue[] }
  | ({ state: "restored"; name: string } & Restored);

/** What became of the jobs in the file of a shelf. */
interface Restored {
  added: number;
  /** Stood on the shelf already, letter for letter. */
  same: number;
  /** Stood there otherwise: both are kept. */
  copied: number;
  /** Opened, but there was no room to write them: they live in this tab. */
  unwritten: number;
  /** Cannot be read, or were promised and are not in the file. */
  lost: number;
}

export const useImport = create<ImportState>()(() => ({ state: "idle" }) as ImportState);

const tell = (state: ImportState) => useImport.setState(state, true);

export function dismissImport(): void {
  tell({ state: "idle" });
}

/** Opens the file of a job or of a shelf beside what the shelf holds: nothing on it, and nothing on the table, is overwritten. */
export async function importFile(file: File): Promise<void> {
  const name = file.name.slice(0, 80);
  tell({ state: "reading", name });
  const read = await openJobFile(file);
  if ("shelf" in read) return tell({ state: "restored", name, ...(await restore(read.shelf)) });
  const opened = read.job;
  if (!opened.ok) return tell({ state: "refused", name, issues: opened.issues });
  const { id, became } = await putBeside(opened.job);
  tell(became === "copied" ? { state: "copied", name } : { state: "idle" });
  goToJob(id);
}

/** Puts a job on the shelf and overwrites nothing: what stands there otherwise under its id stays beside it. */
async function putBeside(
  job: Job,
): Promise<{ id: string; became: "added" | "same" | "copied" | "unwritten" }> {
  const twin = await onShelf(job.id);
  if (twin && JSON.stringify(twin.job) === JSON.stringify(job)) return { id: job.id, became: "same" };
  const id = twin ? newId("job") : job.id;
  if (!(await shelveJob({ ...job, id }))) return { id, became: "unwritten" };
  return { id, became: twin ? "copied" : "added" };
}

async function restore({ jobs, missing }: OpenedShelf): Promise<Restored> {
  const restored: Restored = { added: 0, same: 0, copied: 0, unwritten: 0, lost: missing };
  for (const opened of jobs) {
    if (opened.ok) restored[(await putBeside(opened.job)).became] += 1;
    else restored.lost += 1;
  }
  await loadShelf();
  return restored;
}

/** Every job of the shelf as one file for another device, or for a bad day. */
export async function backUpShelf(): Promise<void> {
  const stored = await readAllStored();
  const day = new Date().toISOString().slice(0, 10);
  download(new Blob(shelfParts(stored), { type: "application/jsonl" }), `shelf-${day}${SHELF_FILE_ENDING}`);
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
