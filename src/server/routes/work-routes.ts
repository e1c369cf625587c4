import { sql } from "kysely";
import { type ShadeWork, type WorkChange, workChangesSchema } from "../../workroom/protocol/index.ts";
import type { AskedByPerson, PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { jobsSeenBy, seeJob, seeJobOnShelf } from "../jobs/see-job.ts";
import { Refused } from "../refused.ts";

/** How far each shade has come, when it is due and who has it. */
export const workRoutes: PersonHandlers = {
  async work(asked) {
    const { trx, workroomId } = asked;
    const seen = jobsSeenBy(asked).where("jobs.binned_at", "is", null).clearSelect().select("jobs.id");
    const rows = await trx
      .selectFrom("work")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .where("job_id", "in", seen)
      .execute();
    const shades = rows.map(
      (row): ShadeWork => ({
        jobId: row.job_id,
        windowId: row.window_id,
        ...(row.state === null ? {} : { state: row.state as NonNullable<ShadeWork["state"]> }),
        ...(row.due === null ? {} : { due: row.due }),
        ...(row.holder === null ? {} : { holder: row.holder }),
        changedBy: row.changed_by,
        changedAt: row.changed_at.toISOString(),
      }),
    );
    return { body: { shades } };
  },

  async changeWork(asked) {
    const { changes } = bodyAs(workChangesSchema, asked.body);
    await checkHolders(asked, changes);
    for (const jobId of new Set(changes.map(({ jobId }) => jobId))) {
      const row = await seeJobOnShelf(asked, jobId, true);
      const job = await asked.room.states.at(asked.trx, asked.workroomId, jobId, row.version, row.request);
      const windows = new Set(job.rooms.flatMap(({ windows }) => windows.map(({ id }) => id)));
      for (const change of changes) {
        if (change.jobId !== jobId) continue;
        // A shade that someone took out of the job meanwhile has no work in hand.
        if (windows.has(change.windowId)) await changeWork(asked, change);
      }
    }
    asked.afterwards(() => asked.room.news.wake(asked.workroomId));
    return {};
  },

  async workOfShade(asked) {
    const row = await seeJob(asked, asked.params.job ?? "");
    const rows = await asked.trx
      .selectFrom("work_log")
      .selectAll()
      .where("workroom_id", "=", asked.workroomId)
      .where("job_id", "=", row.id)
      .where("window_id", "=", asked.params.window ?? "")
      .orderBy("at", "desc")
      .limit(500)
      .execute();
    const entries = rows.map(({ change, person_id, at }) => ({
      ...change,
      at: at.toISOString(),
      person: person_id,
    }));
    return { body: { entries } };
  },
};

async function checkHolders(
  { trx, workroomId }: AskedByPerson,
  changes: readonly WorkChange[],
): Promise<void> {
  const wanted = new Set(changes.flatMap(({ holder }) => holder ?? []));
  if (wanted.size === 0) return;
  const here = await trx
    .selectFrom("people")
    .select("id")
    .where("workroom_id", "=", workroomId)
    .where("is_here", "=", true)
    .execute();
  const known = new Set(here.map(({ id }) => id));
  const strange = [...wanted].find((id) => !known.has(id));
  if (strange !== undefined) {
    throw new Refused(400, "The request cannot be used.", [
      { field: "holder", given: JSON.stringify(strange), wanted: "someone who is in the workroom" },
    ]);
  }
}

async function changeWork({ trx, workroomId, person }: AskedByPerson, change: WorkChange): Promise<void> {
  const { id, jobId, windowId, state, due, holder } = change;
  const isNew = await trx
    .insertInto("work_log")
    .values({
      workroom_id: workroomId,
      id,
      job_id: jobId,
      window_id: windowId,
      person_id: person.id,
      change: JSON.stringify(change),
    })
    .onConflict((clash) => clash.doNothing())
    .returning("id")
    .executeTakeFirst();
  if (!isNew) return;
  const set = {
    ...(state === undefined ? {} : { state }),
    ...(due === undefined ? {} : { due }),
    ...(holder === undefined ? {} : { holder }),
    changed_by: person.id,
    changed_at: sql<Date>`now()`,
  };
  await trx
    .insertInto("work")
    .values({ workroom_id: workroomId, job_id: jobId, window_id: windowId, ...set })
    .onConflict((clash) => clash.columns(["workroom_id", "job_id", "window_id"]).doUpdateSet(set))
    .execute();
}
