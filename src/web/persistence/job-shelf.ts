import type { Job } from "../../job/index.ts";
import { EMPTY_HISTORY, type History } from "../state/history.ts";
import { type Card, type StoredJob, shelfDatabase } from "./database.ts";

export interface Snapshot {
  job: Job;
  history: History;
}

export type Written = { ok: true; revision: number } | { ok: false; reason: "newer" };

function cardOf(job: Job, savedAt: number): Card {
  return {
    id: job.id,
    name: job.name,
    ...(job.client === undefined ? {} : { client: job.client }),
    demo: job.demo === true,
    windows: job.rooms.reduce((sum, room) => sum + room.windows.length, 0),
    savedAt,
  };
}

/** The jobs on the shelf, the latest first. */
export async function listCards(): Promise<Card[]> {
  const cards = await (await shelfDatabase()).getAll("cards");
  return cards.sort((a, b) => b.savedAt - a.savedAt);
}

export async function readStoredJob(id: string): Promise<StoredJob | undefined> {
  return (await shelfDatabase()).get("jobs", id);
}

/**
 * Puts a job on the shelf. Refuses where the shelf holds a later revision than the one it was edited from:
 * another tab saved meanwhile. Resolves only once the write is on disk.
 */
export async function writeJob({ job, history }: Snapshot, baseRevision: number): Promise<Written> {
  const database = await shelfDatabase();
  const transaction = database.transaction(["jobs", "cards"], "readwrite", { durability: "strict" });
  const jobs = transaction.objectStore("jobs");
  const stored = await jobs.get(job.id);
  if (stored && stored.revision > baseRevision) {
    await transaction.done;
    return { ok: false, reason: "newer" };
  }
  const revision = baseRevision + 1;
  const savedAt = Date.now();
  await Promise.all([
    jobs.put({ id: job.id, revision, savedAt, job, history }),
    transaction.objectStore("cards").put(cardOf(job, savedAt)),
    transaction.done,
  ]);
  return { ok: true, revision };
}

/** Takes a job off the shelf and hands it over, so that it can be put back. */
export async function removeJob(id: string): Promise<StoredJob | undefined> {
  const transaction = (await shelfDatabase()).transaction(["jobs", "cards"], "readwrite");
  const stored = await transaction.objectStore("jobs").get(id);
  await Promise.all([
    transaction.objectStore("jobs").delete(id),
    transaction.objectStore("cards").delete(id),
    transaction.done,
  ]);
  return stored;
}

export async function putBack(stored: StoredJob): Promise<void> {
  const transaction = (await shelfDatabase()).transaction(["jobs", "cards"], "readwrite");
  await Promise.all([
    transaction.objectStore("jobs").put(stored),
    transaction.objectStore("cards").put(cardOf(stored.job, stored.savedAt)),
    transaction.done,
  ]);
}

/** Puts the demonstration on the shelf the first time that the planner is opened here, and never again. */
export async function offerDemo(demo: Job): Promise<void> {
  const database = await shelfDatabase();
  if (await database.get("marks", "demo-offered")) return;
  if ((await database.count("jobs")) === 0) await writeJob({ job: demo, history: EMPTY_HISTORY }, 0);
  await database.put("marks", true, "demo-offered");
}
