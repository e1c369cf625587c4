import { SHOP_ID } from "../../workroom/protocol/index.ts";
import type { AskedByPerson } from "../http/asked.ts";
import { Refused } from "../refused.ts";
import { sendAhead } from "../store/send-ahead.ts";
import type { JobRow } from "../store/tables.ts";

type Seeing = Pick<AskedByPerson, "trx" | "workroomId" | "person">;

/** The jobs that a person gets to see: of a class everyone sees those of the others, but only their own copies. */
export function jobsSeenBy({ trx, workroomId, person }: Seeing) {
  const all = trx.selectFrom("jobs").selectAll("jobs").where("jobs.workroom_id", "=", workroomId);
  if (person.role !== "class") return all;
  const pupils = trx
    .selectFrom("people")
    .select("id")
    .where("workroom_id", "=", workroomId)
    .where("role", "=", "class")
    .where("id", "!=", person.id);
  return all.where("jobs.made_by", "not in", pupils);
}

/**
 * One job, held until the request is done where it is to be changed.
 * @throws {Refused} where there is none for this person
 */
export async function seeJob(asked: Seeing, jobId: string, toChange = false): Promise<JobRow> {
  return found(await oneJob(asked, jobId, toChange).execute());
}

/** The same, asked together with the query that follows it; to be waited for after that. */
export async function seeJobAhead(
  asked: Seeing,
  jobId: string,
  toChange = false,
): Promise<() => Promise<JobRow>> {
  const rows = await sendAhead(asked.trx, oneJob(asked, jobId, toChange));
  return async () => found(await rows());
}

function oneJob(asked: Seeing, jobId: string, toChange: boolean) {
  return jobsSeenBy(asked)
    .where("jobs.id", "=", jobId)
    .$if(toChange, (query) => query.forUpdate("jobs"));
}

function found([job]: readonly JobRow[]): JobRow {
  if (!job) throw new Refused(404, "This workroom has no such job.");
  return job;
}

/** The same, refused while it lies in the bin. */
export async function seeJobOnShelf(asked: Seeing, jobId: string, toChange = false): Promise<JobRow> {
  return onShelf(await seeJob(asked, jobId, toChange));
}

/** @throws {Refused} while the job lies in the bin */
export function onShelf(job: JobRow): JobRow {
  if (job.binned_at !== null) throw new Refused(410, "The job is in the bin; put it back first.");
  return job;
}

/** @throws {Refused} where the job is another's and this person may only change their own */
export function checkOwn(
  { person }: Pick<AskedByPerson, "person">,
  job: Pick<JobRow, "id" | "made_by">,
): void {
  if (job.id === SHOP_ID) throw new Refused(403, "The shop stays where it is.");
  if (person.role === "class" && job.made_by !== person.id) {
    throw new Refused(403, "The job is another’s. Make a copy and change that.");
  }
}
