import { create } from "zustand";
import { type SaveTrouble, troubleOf } from "../persistence/autosave.ts";
import type { BinnedJob, Card, StoredJob } from "../persistence/database.ts";
import { readDemo } from "../persistence/demo.ts";
import { binJob, listBin, listCards, offerDemo, putBack } from "../persistence/job-shelf.ts";
import { newId } from "../persistence/new-id.ts";
import { shelveJob } from "../persistence/session.ts";
import { holdJob, takeJob } from "../persistence/tab-lock.ts";
import { tellTabs } from "../persistence/tab-talk.ts";

interface ShelfState {
  /** Undefined until the shelf has been read. */
  cards?: Card[];
  /** Taken off, the latest first. */
  bin: BinnedJob[];
  /** Why the shelf cannot be read. */
  trouble?: SaveTrouble;
  /** The job that was asked to be taken off, and whether another tab has it open: said yes to, it goes. */
  asked?: { id: string; isElsewhere: boolean };
  /** What was put back last, to be said. */
  returned?: string;
}

export const useShelf = create<ShelfState>()(() => ({ bin: [] }));

const set = useShelf.setState;

/** Reads the shelf; on the first visit the demonstration is put on it. */
export async function loadShelf(): Promise<void> {
  try {
    let cards = await listCards();
    if (cards.length === 0) {
      await offerDemo(await readDemo());
      cards = await listCards();
    }
    set({ cards, trouble: undefined });
  } catch (error) {
    return set({ cards: [], bin: [], trouble: troubleOf(error) });
  }
  await loadBin();
}

/** The bin comes after the shelf, and takes nothing from it where it cannot be read. */
async function loadBin(): Promise<void> {
  set({ bin: await listBin().catch(() => []) });
}

/** The demonstration as it was at first, for those who took it off or changed it beyond use. */
export async function shelveDemo(): Promise<void> {
  await shelveJob(await readDemo());
  await refresh();
}

async function refresh(): Promise<void> {
  set({ cards: await listCards() });
  await loadBin();
  tellTabs({ kind: "shelf" });
}

/** Asks whether a job shall go, and says whether another tab has it open. */
export async function askToTakeOff(id: string): Promise<void> {
  const lock = await holdJob(id, () => {});
  lock?.release();
  set({ asked: { id, isElsewhere: lock === undefined }, returned: undefined });
}

export function keepOnShelf(): void {
  set({ asked: undefined });
}

/** Takes a job off the shelf into the bin. A tab that has it open saves it first, and then says that it was taken. */
export async function takeOff(id: string): Promise<void> {
  tellTabs({ kind: "yield", jobId: id });
  const lock = await takeJob(id, () => {});
  try {
    const binned = await binJob(id);
    set({ asked: undefined });
    if (binned) tellTabs({ kind: "taken", jobId: id, binId: binned.binId });
    await refresh();
  } finally {
    lock.release();
  }
}

/** Puts a job from the bin back on the shelf. */
export async function returnToShelf({ binId, card }: BinnedJob): Promise<void> {
  await putBack(binId, newId("job"));
  set({ returned: card.name });
  await refresh();
}

/** A second job like this one, to change freely. */
export async function copyJob(stored: StoredJob): Promise<void> {
  const { demo: _, ...job } = stored.job;
  await shelveJob({ ...job, id: newId("job"), name: `${job.name} (copy)`.slice(0, 120) });
  await refresh();
}
