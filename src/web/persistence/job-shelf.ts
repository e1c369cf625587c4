import type { Job } from "../../job/index.ts";
import type { Replica } from "../../workroom/merge/index.ts";
import { SHOP_ID } from "../../workroom/shop-id/index.ts";
import { EMPTY_HISTORY, type History } from "../state/history.ts";
import { type BinnedJob, type Card, type StoredJob, shelfDatabase } from "./database.ts";
import { newId } from "./new-id.ts";
import { cardOf, cardOfRecord, isCard, revisionOf } from "./stored-job.ts";

export interface Snapshot {
  job: Job;
  history: History;
  /** Of a job that a workroom shares; written in one with the job, so that the two always belong together. */
  room?: Replica | undefined;
}

export type Written = { ok: true; revision: number } | { ok: false; reason: "newer" };

/** The jobs on the shelf, the latest first. A job whose card is lost or spoilt has one made from its record. */
export async function listCards(): Promise<Card[]> {
  const database = await shelfDatabase();
  const [known, ids] = await Promise.all([database.getAll("cards"), database.getAllKeys("jobs")]);
  const cards = new Map(known.filter(isCard).map((card) => [card.id, card]));
  for (const id of ids) {
    if (cards.has(id)) continue;
    const stored = await database.get("jobs", id);
    if (stored) cards.set(id, cardOfRecord(stored));
  }
  // The shop of a workroom has a page of its own.
  return [...cards.values()]
    .filter(({ id, inRoom }) => !(inRoom && id === SHOP_ID))
    .sort((a, b) => b.savedAt - a.savedAt);
}

export async function readStoredJob(id: string): Promise<StoredJob | undefined> {
  return (await shelfDatabase()).get("jobs", id);
}

/**
 * Puts a job on the shelf. Refuses where the shelf holds a later revision than the one it was edited from:
 * another tab saved meanwhile. Resolves only once the write is on disk.
 */
export async function writeJob({ job, history, room }: Snapshot, baseRevision: number): Promise<Written> {
  const database = await shelfDatabase();
  const transaction = database.transaction(["jobs", "cards"], "readwrite", { durability: "strict" });
  const jobs = transaction.objectStore("jobs");
  const later = IDBKeyRange.bound([job.id, baseRevision], [job.id, Number.POSITIVE_INFINITY], true);
  // To read a large job takes as long as a keystroke may: only one that seems to be later is read.
  const seemsLater = (await jobs.index("revision").getKey(later)) !== undefined;
  if (seemsLater && revisionOf(await jobs.get(job.id)) > baseRevision) {
    await transaction.done;
    return { ok: false, reason: "newer" };
  }
  const revision = baseRevision + 1;
  const savedAt = Date.now();
  await Promise.all([
    jobs.put({ id: job.id, revision, savedAt, job, history, ...(room === undefined ? {} : { room }) }),
    transaction.objectStore("cards").put(cardOf(job, savedAt, room)),
    transaction.done,
  ]);
  return { ok: true, revision };
}

/** Days on which the planner is opened that a job waits in the bin. */
export const BIN_DAYS = 30;
const DAY_MS = 86_400_000;

const dayOf = (ms: number) => Math.floor(ms / DAY_MS);

/** Takes a job off the shelf into the bin, in one step: at no moment is it in neither. */
export async function binJob(id: string): Promise<BinnedJob | undefined> {
  const transaction = (await shelfDatabase()).transaction(["jobs", "cards", "bin"], "readwrite", {
    durability: "strict",
  });
  const stored = await transaction.objectStore("jobs").get(id);
  if (!stored) {
    // A card alone stands for nothing.
    await transaction.objectStore("cards").delete(id);
    await transaction.done;
    return undefined;
  }
  const removedAt = Date.now();
  const known = await transaction.objectStore("cards").get(id);
  const card = isCard(known) ? known : cardOfRecord(stored);
  // No clock makes an id that is there no second time.
  const binned = {
    binId: newId(id),
    removedAt,
    waitedDays: 0,
    countedOn: dayOf(removedAt),
    card,
    stored,
  };
  await Promise.all([
    transaction.objectStore("bin").put(binned),
    transaction.objectStore("jobs").delete(id),
    transaction.objectStore("cards").delete(id),
    transaction.done,
  ]);
  return binned;
}

/** What waits in the bin, the latest first; what has waited its days goes for good. */
export async function listBin(now = Date.now()): Promise<BinnedJob[]> {
  const transaction = (await shelfDatabase()).transaction("bin", "readwrite");
  const today = dayOf(now);
  const left: BinnedJob[] = [];
  for (const binned of await transaction.store.getAll()) {
    const { waitedDays = 0, countedOn } = binned;
    const counted =
      countedOn === today ? binned : { ...binned, waitedDays: waitedDays + 1, countedOn: today };
    if (counted.waitedDays !== undefined && counted.waitedDays > BIN_DAYS)
      await transaction.store.delete(binned.binId);
    else {
      left.push(counted);
      if (counted !== binned) await transaction.store.put(counted);
    }
  }
  await transaction.done;
  return left.sort((a, b) => b.removedAt - a.removedAt);
}

/** Days that a binned job still has, at least one as long as it is there. */
export function daysLeft({ waitedDays = 0 }: BinnedJob): number {
  return Math.max(1, BIN_DAYS - waitedDays);
}

/**
 * Puts a job from the bin back on the shelf, with its history. Where the shelf holds a job of its id again, it comes
 * back under `otherId`, so that neither is lost. Gives the id under which it stands; undefined where it is gone.
 */
export async function putBack(binId: string, otherId: string): Promise<string | undefined> {
  const transaction = (await shelfDatabase()).transaction(["jobs", "cards", "bin"], "readwrite", {
    durability: "strict",
  });
  const binned = await transaction.objectStore("bin").get(binId);
  if (!binned) {
    await transaction.done;
    return undefined;
  }
  const { stored, card } = binned;
  const isTaken = (await transaction.objectStore("jobs").getKey(stored.id)) !== undefined;
  const id = isTaken ? otherId : stored.id;
  await Promise.all([
    transaction.objectStore("jobs").put({ ...stored, id, job: { ...stored.job, id } }),
    transaction.objectStore("cards").put({ ...card, id }),
    transaction.objectStore("bin").delete(binId),
    transaction.done,
  ]);
  return id;
}

/** Takes a job off this device, and off it alone: another place has it. */
export async function forgetJob(id: string): Promise<void> {
  const transaction = (await shelfDatabase()).transaction(["jobs", "cards"], "readwrite");
  await Promise.all([
    transaction.objectStore("jobs").delete(id),
    transaction.objectStore("cards").delete(id),
    transaction.done,
  ]);
}

/** Every job of the shelf as it is kept, whether this release can read it or not. */
export async function readAllStored(): Promise<StoredJob[]> {
  return (await shelfDatabase()).getAll("jobs");
}

/** Puts the demonstration on the shelf the first time that the planner is opened here, and never again. */
export async function offerDemo(demo: Job): Promise<void> {
  const database = await shelfDatabase();
  if (await database.get("marks", "demo-offered")) return;
  if ((await database.count("jobs")) === 0) await writeJob({ job: demo, history: EMPTY_HISTORY }, 0);
  await database.put("marks", true, "demo-offered");
}
