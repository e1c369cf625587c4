import { create } from "zustand";
import type { Job } from "../../job/index.ts";
import type { Card, StoredJob } from "../persistence/database.ts";
import { listCards, offerDemo, putBack, removeJob } from "../persistence/job-shelf.ts";
import { newId } from "../persistence/new-id.ts";
import { shelveJob } from "../persistence/session.ts";
import { holdJob } from "../persistence/tab-lock.ts";
import { tellTabs } from "../persistence/tab-talk.ts";

interface ShelfState {
  /** Undefined until the shelf has been read. */
  cards?: Card[];
  /** The browser keeps nothing. */
  trouble: boolean;
  removed?: StoredJob;
  /** A job that another tab has open cannot be taken away under it. */
  busy?: string;
  putBackRemoved(): Promise<void>;
}

export const useShelf = create<ShelfState>()((set, get) => ({
  trouble: false,
  async putBackRemoved() {
    const { removed } = get();
    if (!removed) return;
    await putBack(removed);
    set({ removed: undefined });
    await refresh();
  },
}));

const set = useShelf.setState;

/** Reads the shelf; on the first visit the demonstration is put on it. */
export async function loadShelf(): Promise<void> {
  try {
    let cards = await listCards();
    if (cards.length === 0) {
      await offerDemo(await readDemo());
      cards = await listCards();
    }
    set({ cards, trouble: false });
  } catch {
    set({ cards: [], trouble: true });
  }
}

async function readDemo(): Promise<Job> {
  const [{ default: document }, { openJob }] = await Promise.all([
    import("../../../examples/lantern-row.json"),
    import("../state/job-door.ts"),
  ]);
  const demo = openJob(document);
  if (!demo.ok) throw new Error(`invalid demonstration: ${demo.issues[0]?.field}`);
  return demo.job;
}

/** The demonstration as it was at first, for those who took it off or changed it beyond use. */
export async function shelveDemo(): Promise<void> {
  await shelveJob(await readDemo());
  await refresh();
}

async function refresh(): Promise<void> {
  set({ cards: await listCards() });
  tellTabs({ kind: "shelf" });
}

/** Takes a job off the shelf; it can be put back. */
export async function takeOff(id: string): Promise<void> {
  const lock = await holdJob(id, () => {});
  if (!lock) return set({ busy: id });
  try {
    const removed = await removeJob(id);
    set({ busy: undefined, ...(removed ? { removed } : {}) });
    await refresh();
  } finally {
    lock.release();
  }
}

/** A second job like this one, to change freely. */
export async function copyJob(stored: StoredJob): Promise<void> {
  const { demo: _, ...job } = stored.job;
  await shelveJob({ ...job, id: newId("job"), name: `${job.name} (copy)`.slice(0, 120) });
  await refresh();
}
