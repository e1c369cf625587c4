import type { Job } from "../../job/index.ts";
import type { RoomTrx } from "../store/store.ts";

/** What the shelf shows of a job without opening it. */
export function shelfColumns(job: Job) {
  return {
    name: job.name,
    client: job.client ?? null,
    is_demo: job.demo ?? false,
    windows: job.rooms.reduce((sum, { windows }) => sum + windows.length, 0),
  };
}

/** Puts a job on the shelf; false where the id is taken. */
export async function makeJob(
  trx: RoomTrx,
  workroomId: string,
  personId: string,
  request: string,
  job: Job,
): Promise<boolean> {
  const made = await trx
    .insertInto("jobs")
    .values({
      workroom_id: workroomId,
      id: job.id,
      request,
      ...shelfColumns(job),
      version: 0,
      made_by: personId,
      changed_by: personId,
    })
    .onConflict((clash) => clash.doNothing())
    .returning("id")
    .executeTakeFirst();
  if (!made) return false;
  await keepSnapshot(trx, workroomId, job, 0);
  return true;
}

export async function keepSnapshot(
  trx: RoomTrx,
  workroomId: string,
  job: Job,
  version: number,
): Promise<void> {
  await trx
    .insertInto("snapshots")
    .values({ workroom_id: workroomId, job_id: job.id, version, document: JSON.stringify(job) })
    .execute();
}
