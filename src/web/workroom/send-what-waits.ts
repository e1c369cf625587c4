import { sameJson } from "../../workroom/merge/index.ts";
import type { StoredJob } from "../persistence/database.ts";
import { readAllStored, readStoredJob, writeJob } from "../persistence/job-shelf.ts";
import { holdJob } from "../persistence/tab-lock.ts";
import { tellTabs } from "../persistence/tab-talk.ts";
import { historyAfter } from "./history-after.ts";
import { meetServer, type SharedTable } from "./shared-table.ts";

/** Sends the edits of shared jobs that are not open anywhere: the device was away when they were made. */
export async function sendWhatWaits(): Promise<void> {
  for (const { id, job, room } of await readAllStored()) {
    if (room === undefined || (room.outbox.length === 0 && sameJson(job, room.shown))) continue;
    const lock = await holdJob(id, () => {});
    // Whoever has it open sends it.
    if (lock === undefined) continue;
    try {
      await sendStored(id);
    } finally {
      lock.release();
    }
  }
}

async function sendStored(id: string): Promise<void> {
  let stored = await readStoredJob(id);
  let writing: Promise<unknown> = Promise.resolve();
  const table: SharedTable = {
    jobId: id,
    look: () => (stored?.room ? { job: stored.job, room: stored.room, mayEdit: true } : undefined),
    lay(room, job, taken) {
      if (!stored) return;
      const { revision } = stored;
      const history = historyAfter(stored.history, stored.job, taken);
      stored = { ...stored, job, room, history, revision: revision + 1 } satisfies StoredJob;
      writing = writing.then(() => writeJob({ job, history, room }, revision));
    },
    kept: async () => void (await writing),
  };
  await meetServer(table);
  await writing;
  tellTabs({ kind: "shelf" });
}
