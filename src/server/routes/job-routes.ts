import { sql } from "kysely";
import { type Job, openJob } from "../../job/index.ts";
import { changesBetween } from "../../workroom/merge/index.ts";
import {
  type Conflict,
  copyJobSchema,
  newJobSchema,
  type OperationsPage,
  restoreJobSchema,
  SHOP_ID,
  type ShelvedJob,
  sentOperationsSchema,
} from "../../workroom/protocol/index.ts";
import type { Answer, AskedByPerson, PersonHandlers } from "../http/asked.ts";
import { bodyAs } from "../http/read-body.ts";
import { takeEdits } from "../jobs/account-cuts.ts";
import { historyOf } from "../jobs/history.ts";
import { makeJob } from "../jobs/make-job.ts";
import { numberedOf } from "../jobs/numbered-of.ts";
import { checkOwn, jobsSeenBy, onShelf, seeJob, seeJobAhead, seeJobOnShelf } from "../jobs/see-job.ts";
import { earlierOperations } from "../jobs/take-operations.ts";
import { noteDeed } from "../people/audit.ts";
import { operationsWithOwnPictures, withOwnPictures } from "../pictures/with-own-pictures.ts";
import { notAllowed, Refused } from "../refused.ts";
import type { JobRow } from "../store/tables.ts";

/** Operations of one answer; a client that lacks more asks again. */
const PAGE = 500;

export const jobRoutes: PersonHandlers = {
  shelf: (asked) => shelfOf(asked, false),
  bin: (asked) => shelfOf(asked, true),

  async makeJob(asked) {
    const { request, job: document } = bodyAs(newJobSchema, asked.body);
    const own = await withOwnPictures(document);
    if (own.issues.length > 0) throw new Refused(400, "A picture cannot be taken.", own.issues);
    const opened = openJob(own.document);
    if (!opened.ok) throw new Refused(400, "The job cannot be opened.", opened.issues);
    return await putOnShelf(asked, request, opened.job);
  },

  async copyJob(asked) {
    const { request, id, name } = bodyAs(copyJobSchema, asked.body);
    const row = await seeJobOnShelf(asked, param(asked, "job"));
    if (row.id === SHOP_ID) throw notAllowed();
    const job = await asked.room.states.at(asked.trx, asked.workroomId, row.id, row.version, row.request);
    return await putOnShelf(asked, request, { ...job, id, name });
  },

  async job(asked) {
    const row = await seeJob(asked, param(asked, "job"));
    const { trx, workroomId, room } = asked;
    const job = await room.states.at(trx, workroomId, row.id, row.version, row.request);
    asked.afterwards(() => room.states.keep(workroomId, row.request, { version: row.version, job }));
    return { body: { version: row.version, job, conflicts: await openConflicts(asked, row) } };
  },

  async jobAt(asked) {
    const row = await seeJob(asked, param(asked, "job"));
    const version = versionOf(asked.params.version, row);
    const job = await asked.room.states.at(asked.trx, asked.workroomId, row.id, version);
    return { body: { version, job, conflicts: [] } };
  },

  async operations(asked) {
    const after = Number(asked.query("after") ?? 0);
    if (!Number.isInteger(after) || after < 0) {
      const given = String(asked.query("after")).slice(0, 40);
      throw new Refused(400, "The request cannot be used.", [{ field: "after", given, wanted: "a version" }]);
    }
    const jobId = param(asked, "job");
    const job = await seeJobAhead(asked, jobId);
    const found = await asked.trx
      .selectFrom("operations")
      .selectAll()
      .where("workroom_id", "=", asked.workroomId)
      .where("job_id", "=", jobId)
      .where("version", ">", after)
      .orderBy("version")
      .limit(PAGE)
      .execute();
    const row = await job();
    const more = found.length === PAGE && (found.at(-1)?.version ?? 0) < row.version;
    const body: OperationsPage = { version: row.version, operations: found.map(numberedOf), more };
    return { body };
  },

  async sendOperations(asked) {
    const { operations } = bodyAs(sentOperationsSchema, asked.body);
    const jobId = param(asked, "job");
    const job = await seeJobAhead(asked, jobId, true);
    const earlier = await earlierOperations(asked, jobId, operations);
    const row = onShelf(await job());
    const own = await operationsWithOwnPictures(operations);
    return { body: await takeEdits(asked, row, own.operations, { unfit: own.unfit, earlier }) };
  },

  async jobHistory(asked) {
    const row = await seeJob(asked, param(asked, "job"));
    return { body: { entries: await historyOf(asked, row.id, asked.query("zone")) } };
  },

  async restoreJob(asked) {
    const { operation, version: wanted } = bodyAs(restoreJobSchema, asked.body);
    const row = await seeJobOnShelf(asked, param(asked, "job"), true);
    const version = versionOf(String(wanted), row);
    const { trx, workroomId, room } = asked;
    const now = await room.states.at(trx, workroomId, row.id, row.version, row.request);
    const then = await room.states.at(trx, workroomId, row.id, version);
    await noteDeed(trx, workroomId, asked.person.id, "restored a job", `${row.id} as of ${version}`);
    const at = new Date().toISOString();
    const changes = changesBetween(now, then);
    const one = { id: operation, jobId: row.id, baseVersion: row.version, at, changes };
    return { body: await takeEdits(asked, row, [one]) };
  },

  async binJob(asked) {
    const row = await seeJob(asked, param(asked, "job"), true);
    checkOwn(asked, row);
    if (row.binned_at === null) await moveJob(asked, row, true);
    return {};
  },

  async putBackJob(asked) {
    const row = await seeJob(asked, param(asked, "job"), true);
    checkOwn(asked, row);
    if (row.binned_at !== null) await moveJob(asked, row, false);
    return {};
  },

  async wholeShelf(asked) {
    const rows = await jobsSeenBy(asked)
      .where("jobs.binned_at", "is", null)
      .where("jobs.id", "!=", SHOP_ID)
      .orderBy("jobs.id")
      .execute();
    const lines = [JSON.stringify({ format: "shadewright-shelf", version: 1, jobs: rows.length })];
    for (const { id, version } of rows) {
      lines.push(JSON.stringify(await asked.room.states.at(asked.trx, asked.workroomId, id, version)));
    }
    const bytes = `${lines.join("\n")}\n`;
    await noteDeed(asked.trx, asked.workroomId, asked.person.id, "saved the whole shelf");
    return { file: { bytes, type: "application/jsonl", name: "workroom.shadewright-shelf.jsonl" } };
  },
};

function param({ params }: AskedByPerson, name: string): string {
  return params[name] ?? "";
}

function versionOf(text: string | undefined, { version }: JobRow): number {
  const wanted = Number(text);
  if (!Number.isInteger(wanted) || wanted < 0 || wanted > version) {
    throw new Refused(404, `The job has no such version; its versions go from 0 to ${version}.`);
  }
  return wanted;
}

async function shelfOf(asked: AskedByPerson, isBin: boolean): Promise<Answer> {
  const rows = await jobsSeenBy(asked)
    .where("jobs.binned_at", isBin ? "is not" : "is", null)
    .where("jobs.id", "!=", SHOP_ID)
    .orderBy("jobs.changed_at", "desc")
    .execute();
  return { body: { jobs: rows.map(shelvedJob) } };
}

function shelvedJob(row: JobRow): ShelvedJob {
  return {
    id: row.id,
    name: row.name,
    ...(row.client === null ? {} : { client: row.client }),
    isDemo: row.is_demo,
    windows: row.windows,
    version: row.version,
    openConflicts: row.open_conflicts,
    madeBy: row.made_by,
    madeAt: row.made_at.toISOString(),
    changedBy: row.changed_by,
    changedAt: row.changed_at.toISOString(),
    ...(row.binned_at === null ? {} : { binnedAt: row.binned_at.toISOString() }),
  };
}

async function putOnShelf(asked: AskedByPerson, request: string, job: Job): Promise<Answer> {
  const { trx, workroomId, person, room } = asked;
  const isMade = await makeJob(trx, workroomId, person.id, request, job);
  if (!isMade) {
    const before = await trx
      .selectFrom("jobs")
      .selectAll()
      .where("workroom_id", "=", workroomId)
      .where("request", "=", request)
      .executeTakeFirst();
    // The same request, sent again since its answer got lost.
    if (before?.id === job.id && before.made_by === person.id)
      return { status: 201, body: shelvedJob(before) };
    const given = JSON.stringify(job.id);
    throw new Refused(409, "The workroom has a job with this id already.", [
      { field: "job.id", given, wanted: "an id that no job here has, nor one in the bin" },
    ]);
  }
  asked.afterwards(() => {
    room.states.keep(workroomId, request, { version: 0, job });
    room.news.wake(workroomId);
  });
  return { status: 201, body: shelvedJob(await seeJob(asked, job.id)) };
}

async function moveJob(asked: AskedByPerson, { id }: JobRow, isBin: boolean): Promise<void> {
  const { trx, workroomId, person, room } = asked;
  await trx
    .updateTable("jobs")
    .set({ binned_at: isBin ? sql<Date>`now()` : null, changed_by: person.id, changed_at: sql<Date>`now()` })
    .where("workroom_id", "=", workroomId)
    .where("id", "=", id)
    .execute();
  if (isBin) {
    // What lies in the bin promises itself nothing.
    await trx
      .deleteFrom("reservations")
      .where("workroom_id", "=", workroomId)
      .where("job_id", "=", id)
      .execute();
  }
  await noteDeed(
    trx,
    workroomId,
    person.id,
    isBin ? "put a job into the bin" : "took a job out of the bin",
    id,
  );
  asked.afterwards(() => room.news.wake(workroomId));
}

async function openConflicts(asked: AskedByPerson, { id }: JobRow): Promise<Conflict[]> {
  const rows = await asked.trx
    .selectFrom("conflicts")
    .selectAll()
    .where("workroom_id", "=", asked.workroomId)
    .where("job_id", "=", id)
    .where("settled_in", "is", null)
    .orderBy("version")
    .execute();
  return rows.map(({ id: conflict, path, values, version, person_id }) => ({
    id: conflict,
    path,
    ...values,
    version,
    person: person_id,
  }));
}
