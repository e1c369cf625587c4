import { type Job, openJob } from "../../job/index.ts";
import { applyChanges } from "../../workroom/merge/index.ts";
import type { RoomTrx } from "../store/store.ts";

interface KnownState {
  version: number;
  job: Job;
}

/** States that a process remembers, so that an edit reads no more than what came since. */
const MOST_KNOWN = 200;

/** The states of jobs: the last snapshot and what was done since. */
export class JobStates {
  readonly #known = new Map<string, KnownState>();

  /**
   * The job as it was at a version that it has had.
   * @param request by which the job was made, where its newest state may be remembered: an id can come again, once a
   *   job has left the bin for good
   */
  async at(trx: RoomTrx, workroomId: string, jobId: string, version: number, request = ""): Promise<Job> {
    const known = this.#known.get(keyOf(workroomId, request));
    if (known?.version === version) return known.job;
    const base =
      known !== undefined && known.version < version
        ? known
        : await snapshotBefore(trx, workroomId, jobId, version);
    const later = await trx
      .selectFrom("operations")
      .select("changes")
      .where("workroom_id", "=", workroomId)
      .where("job_id", "=", jobId)
      .where("version", ">", base.version)
      .where("version", "<=", version)
      .orderBy("version")
      .execute();
    return later.reduce((job, { changes }) => applyChanges(job, changes), base.job);
  }

  /** Remembers the newest state of a job, once it is written. */
  keep(workroomId: string, request: string, state: KnownState): void {
    const key = keyOf(workroomId, request);
    const known = this.#known.get(key);
    this.#known.delete(key);
    this.#known.set(key, known !== undefined && known.version > state.version ? known : state);
    if (this.#known.size > MOST_KNOWN) {
      const [oldest = ""] = this.#known.keys();
      this.#known.delete(oldest);
    }
  }
}

function keyOf(workroomId: string, request: string): string {
  return `${workroomId}/${request}`;
}

async function snapshotBefore(
  trx: RoomTrx,
  workroomId: string,
  jobId: string,
  version: number,
): Promise<KnownState> {
  const found = await trx
    .selectFrom("snapshots")
    .select(["version", "document"])
    .where("workroom_id", "=", workroomId)
    .where("job_id", "=", jobId)
    .where("version", "<=", version)
    .orderBy("version", "desc")
    .limit(1)
    .executeTakeFirstOrThrow();
  const opened = openJob(found.document);
  if (!opened.ok) throw new Error(`the snapshot of job ${jobId} at ${found.version} does not open`);
  return { version: found.version, job: opened.job };
}
