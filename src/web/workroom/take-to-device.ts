import { replicaOf } from "../../workroom/merge/index.ts";
import type { HeldJob } from "../../workroom/protocol/index.ts";
import type { StoredJob } from "../persistence/database.ts";
import { readStoredJob, writeJob } from "../persistence/job-shelf.ts";
import { tellTabs } from "../persistence/tab-talk.ts";
import { EMPTY_HISTORY } from "../state/history.ts";
import { askServer } from "./ask-server.ts";

/** A job of the workroom, as it is kept on this device from now on. */
export async function takeToDevice(jobId: string): Promise<StoredJob | undefined> {
  const held = await askServer<HeldJob>("job", { params: { job: jobId } });
  await writeJob({ job: held.job, history: EMPTY_HISTORY, room: replicaOf(held) }, 0);
  tellTabs({ kind: "shelf" });
  return readStoredJob(jobId);
}
