import type { NumberedOperation } from "../../workroom/protocol/index.ts";
import { layOutShared, usePlanner } from "../state/store.ts";
import { historyAfter } from "./history-after.ts";
import type { SharedTable } from "./shared-table.ts";

/** The job that is open in this tab; the session writes what is laid here as it writes edits. */
export function openTable(jobId: string): SharedTable {
  return {
    jobId,
    look() {
      const { job, room, access } = usePlanner.getState();
      if (job?.id !== jobId || room === undefined) return undefined;
      if (access !== "mine" && access !== "looking") return undefined;
      return { job, room, mayEdit: access === "mine" };
    },
    lay(room, job, taken: readonly NumberedOperation[]) {
      const { history, job: before } = usePlanner.getState();
      layOutShared(room, job, before ? historyAfter(history, before, taken) : history);
    },
    kept: () =>
      new Promise((done) => {
        const isKept = () => usePlanner.getState().saving.state !== "saving";
        // The session begins to write a moment after an edit.
        setTimeout(() => {
          if (isKept()) return done();
          const stop = usePlanner.subscribe(() => {
            if (!isKept()) return;
            stop();
            done();
          });
        }, 20);
      }),
  };
}
