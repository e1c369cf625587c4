import { sql } from "kysely";
import { openJob } from "../../job/index.ts";
import { JobStates } from "../jobs/job-states.ts";
import { APP_ROLE, ROOM_TABLES } from "../store/migrations.ts";
import type { RoomDb, Store } from "../store/store.ts";

export interface Checked {
  what: string;
  isWell: boolean;
  /** What was found, where that says more. */
  found?: string;
}

/** Looks a database over: nothing is changed. Each job is put together from its operations and opened. */
export async function* examine(store: Store): AsyncGenerator<Checked> {
  const { db } = store;
  const { rows } = await sql<{
    version: string;
  }>`select current_setting('server_version') as version`.execute(db);
  yield { what: "database", isWell: true, found: `${store.kind}, PostgreSQL ${rows[0]?.version ?? ""}` };
  yield await fenceOf(db);
  yield await roleOf(db);
  const jobs = await db.selectFrom("jobs").select(["workroom_id", "id", "version"]).execute();
  const { count } = await db
    .selectFrom("workrooms")
    .select(sql<number>`count(*)::int`.as("count"))
    .executeTakeFirstOrThrow();
  yield { what: "workrooms", isWell: true, found: `${count}, with ${jobs.length} documents` };
  const gaps = await sql<{ id: string }>`
    select j.id from jobs j left join operations o on o.workroom_id = j.workroom_id and o.job_id = j.id
    group by j.workroom_id, j.id, j.version
    having count(o.version) <> j.version or coalesce(max(o.version), 0) <> j.version`.execute(db);
  yield {
    what: "operations numbered without a gap",
    isWell: gaps.rows.length === 0,
    ...(gaps.rows.length === 0 ? {} : { found: gaps.rows.map(({ id }) => id).join(", ") }),
  };
  const broken: string[] = [];
  const states = new JobStates();
  for (const { workroom_id, id, version } of jobs) {
    const opens = await db
      .transaction()
      .execute(async (trx) => openJob(await states.at(trx, workroom_id, id, version)).ok)
      .catch(() => false);
    if (!opens) broken.push(id);
  }
  yield {
    what: "every job opens",
    isWell: broken.length === 0,
    ...(broken.length === 0 ? {} : { found: broken.join(", ") }),
  };
}

/** Tables whose rows are not kept apart by workroom. */
async function fenceOf(db: RoomDb): Promise<Checked> {
  const { rows } = await sql<{ name: string }>`
    select c.relname as name from pg_class c join pg_policies p on p.tablename = c.relname
    where c.relrowsecurity and p.policyname = 'own_workroom' and ${APP_ROLE} = any (p.roles)`.execute(db);
  const fenced = new Set(rows.map(({ name }) => name));
  const open = ROOM_TABLES.filter((table) => !fenced.has(table));
  return {
    what: "rows of workrooms kept apart by the database",
    isWell: open.length === 0,
    ...(open.length === 0 ? {} : { found: `not in ${open.join(", ")}` }),
  };
}

async function roleOf(db: RoomDb): Promise<Checked> {
  const { rows } = await sql<{ strong: boolean }>`
    select rolsuper or rolbypassrls as strong from pg_roles where rolname = ${APP_ROLE}`.execute(db);
  return { what: "requests work in a role that is bound by that", isWell: rows[0]?.strong === false };
}
