import { randomUUID } from "node:crypto";
import { type Selectable, sql } from "kysely";
import type { Job, JobIssue } from "../../job/index.ts";
import { type NumberedChanges, rebase } from "../../workroom/merge/index.ts";
import {
  type Conflict,
  type FieldChange,
  may,
  mayChangeField,
  type NumberedOperation,
  type Operation,
  type OperationAnswer,
  type OperationAnswers,
  SHOP_ID,
} from "../../workroom/protocol/index.ts";
import type { AskedByPerson } from "../http/asked.ts";
import { sendAhead } from "../store/send-ahead.ts";
import type { JobRow, RoomTables } from "../store/tables.ts";
import { keepSnapshot, shelfColumns } from "./make-job.ts";
import { numberedOf } from "./numbered-of.ts";

type OperationRow = Selectable<RoomTables["operations"]>;

/** What is known already of operations that are sent. */
export interface Known {
  /** What is wrong with some of them, by their ids. */
  unfit?: ReadonlyMap<string, JobIssue[]>;
  /** As `earlierOperations` reads it, while the job is held. */
  earlier?: readonly OperationRow[];
}

/** A state is written whole so often; between, it is put together from what was done since. */
const SNAPSHOT_EVERY = 100;

/**
 * Takes operations on a job, one after the other: each is rebased on what others did since its base, opened by the job
 * schema, numbered and kept. One that was taken before is answered as it was then.
 * @param row the job, held by this request
 * @param known what is known of them already
 * @returns the answers, and the job as it was and as it is then
 */
export async function takeOperations(
  asked: AskedByPerson,
  row: JobRow,
  operations: readonly Operation[],
  { unfit = new Map(), earlier }: Known = {},
): Promise<OperationAnswers & { before: Job; job: Job }> {
  const { trx, workroomId, room, afterwards } = asked;
  const before = await room.states.at(trx, workroomId, row.id, row.version, row.request);
  const taking = new Taking(asked, row, before);
  taking.note(earlier ?? (await earlierOperations(asked, row.id, operations)), operations);
  const answers: OperationAnswer[] = [];
  for (const operation of operations) answers.push(await taking.take(operation, unfit.get(operation.id)));
  const { version, job } = taking;
  if (version > row.version) {
    const kept = trx
      .updateTable("jobs")
      .set({
        ...shelfColumns(job),
        version,
        open_conflicts: row.open_conflicts + taking.conflictsChange,
        changed_by: asked.person.id,
        changed_at: sql<Date>`now()`,
      })
      .where("workroom_id", "=", workroomId)
      .where("id", "=", row.id);
    await sendAhead(trx, kept);
    afterwards(() => {
      room.states.keep(workroomId, row.request, { version, job });
      room.news.wake(workroomId);
    });
  }
  return { version, answers, before, job };
}

/**
 * What came since the oldest base of some operations, and those of them that were taken before: both at once, since a way
 * to the database and back is what an edit mostly waits for.
 */
export async function earlierOperations(
  { trx, workroomId }: AskedByPerson,
  jobId: string,
  operations: readonly Operation[],
): Promise<OperationRow[]> {
  const ids = operations.map(({ id }) => id);
  const base = Math.min(...operations.map(({ baseVersion }) => baseVersion));
  return await trx
    .selectFrom("operations")
    .selectAll()
    .where("workroom_id", "=", workroomId)
    .where("job_id", "=", jobId)
    .where((is) => is.or([is("id", "in", ids), is("version", ">", base)]))
    .orderBy("version")
    .execute();
}

class Taking {
  version: number;
  job: Job;
  conflictsChange = 0;
  readonly #asked: AskedByPerson;
  readonly #row: JobRow;
  readonly #later: NumberedChanges[] = [];
  /** Who made which version. */
  readonly #makers = new Map<number, string>();
  readonly #taken = new Map<string, NumberedOperation>();

  constructor(asked: AskedByPerson, row: JobRow, job: Job) {
    this.#asked = asked;
    this.#row = row;
    this.version = row.version;
    this.job = job;
  }

  note(earlier: readonly OperationRow[], operations: readonly Operation[]): void {
    const ids = new Set(operations.map(({ id }) => id));
    for (const row of earlier) {
      if (ids.has(row.id)) this.#taken.set(row.id, numberedOf(row));
      this.#later.push({ version: row.version, changes: row.changes });
      this.#makers.set(row.version, row.person_id);
    }
  }

  async take(operation: Operation, unfit: JobIssue[] = []): Promise<OperationAnswer> {
    const before = this.#taken.get(operation.id);
    if (before) return { ok: true, operation: before };
    const issues = unfit.length > 0 ? unfit : this.#issuesWith(operation);
    if (issues.length > 0) return { ok: false, id: operation.id, issues };
    const later = this.#later.filter(({ version }) => version > operation.baseVersion);
    const rebased = rebase(this.job, operation, later);
    if (!rebased.ok) return { ok: false, id: operation.id, issues: rebased.issues };
    const broken = brokenRules(this.#row.id, rebased.job);
    if (broken.length > 0) return { ok: false, id: operation.id, issues: broken };
    this.version++;
    const conflicts = rebased.conflicts.map(({ path, base, mine, theirs, theirVersion }): Conflict => {
      const theirPerson = theirVersion === undefined ? undefined : this.#makers.get(theirVersion);
      const values = { base, mine, theirs, theirPerson };
      const there = Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined));
      const { version } = this;
      return { id: randomUUID(), path: [...path], ...there, version, person: this.#asked.person.id };
    });
    const numbered = await this.#keep(operation, rebased.changes, conflicts);
    this.job = rebased.job;
    this.#later.push({ version: this.version, changes: rebased.changes });
    this.#makers.set(this.version, this.#asked.person.id);
    this.#taken.set(operation.id, numbered);
    if (this.version % SNAPSHOT_EVERY === 0) {
      await keepSnapshot(this.#asked.trx, this.#asked.workroomId, this.job, this.version);
    }
    return { ok: true, operation: numbered };
  }

  #issuesWith({ jobId, baseVersion, changes }: Operation): JobIssue[] {
    const { id, made_by } = this.#row;
    const { person } = this.#asked;
    if (jobId !== id) return [{ field: "jobId", given: JSON.stringify(jobId), wanted: JSON.stringify(id) }];
    if (baseVersion > this.version) {
      return [{ field: "baseVersion", given: String(baseVersion), wanted: `at most ${this.version}` }];
    }
    const isOwn = made_by === person.id;
    const isClosed = id === SHOP_ID ? !may(person.role, "change-shop") : person.role === "class" && !isOwn;
    if (isClosed) return [{ field: "jobId", given: JSON.stringify(id), wanted: "a job that you may change" }];
    return changes
      .filter(({ path }) => !mayChangeField(person.role, id, path, isOwn))
      .slice(0, 20)
      .map(({ path }) => ({
        field: path.map((step) => (typeof step === "string" ? step : step.id)).join("."),
        given: "a change",
        wanted: `someone whose part in the workroom includes it; yours is ${person.role}`,
      }));
  }

  async #keep(
    { id, at, baseVersion, settles = [] }: Operation,
    changes: FieldChange[],
    conflicts: Conflict[],
  ): Promise<NumberedOperation> {
    const { trx, workroomId, person } = this.#asked;
    const { version } = this;
    const own = { workroom_id: workroomId, job_id: this.#row.id, version, person_id: person.id };
    const row = await trx
      .insertInto("operations")
      .values({
        ...own,
        id,
        client_at: at,
        base_version: baseVersion,
        changes: JSON.stringify(changes),
        conflicts: JSON.stringify(conflicts),
        settles: JSON.stringify(settles),
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    for (const { id: conflict, path, base, mine, theirs, theirPerson } of conflicts) {
      const values = JSON.stringify({ base, mine, theirs, theirPerson });
      await trx
        .insertInto("conflicts")
        .values({ ...own, id: conflict, path: JSON.stringify(path), values, settled_in: null })
        .execute();
    }
    this.conflictsChange += conflicts.length;
    if (settles.length > 0) this.conflictsChange -= await this.#settle(settles);
    return numberedOf(row);
  }

  async #settle(settles: readonly string[]): Promise<number> {
    const { trx, workroomId, person } = this.#asked;
    const open = await trx
      .selectFrom("conflicts")
      .select(["id", "path"])
      .where("workroom_id", "=", workroomId)
      .where("job_id", "=", this.#row.id)
      .where("id", "in", settles)
      .where("settled_in", "is", null)
      .execute();
    const isOwn = this.#row.made_by === person.id;
    const settled = open.filter(({ path }) => mayChangeField(person.role, this.#row.id, path, isOwn));
    if (settled.length === 0) return 0;
    await trx
      .updateTable("conflicts")
      .set({ settled_in: this.version })
      .where("workroom_id", "=", workroomId)
      .where("job_id", "=", this.#row.id)
      .where(
        "id",
        "in",
        settled.map(({ id }) => id),
      )
      .execute();
    return settled.length;
  }
}

/** What holds of a job in a workroom beyond its schema. */
function brokenRules(id: string, job: Job): JobIssue[] {
  if (job.id !== id) return [{ field: "id", given: JSON.stringify(job.id), wanted: JSON.stringify(id) }];
  if (id === SHOP_ID && job.rooms.length > 0) {
    return [
      {
        field: "rooms",
        given: `a list of ${job.rooms.length}`,
        wanted: "an empty list: the shop has no windows",
      },
    ];
  }
  return [];
}
