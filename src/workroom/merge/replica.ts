import type { Job } from "../../job/index.ts";
import type { Conflict, NumberedOperation, Operation } from "../protocol/index.ts";
import { applyChanges, changesBetween } from "./changes.ts";
import { rebase } from "./rebase.ts";

/** One device's side of a job that several share. All of it is kept together, so that no moment loses a part. */
export interface Replica {
  /** The newest version that came from the server, and the job as it was then. */
  version: number;
  base: Job;
  /** Operations on their way, the eldest first: sent until the server has answered each. */
  outbox: readonly Operation[];
  /** What was numbered since the version that the eldest of them was made from. */
  since: readonly NumberedOperation[];
  /** The base with the outbox done to it: what is on the table differs from it by edits not yet in the outbox. */
  shown: Job;
  /** What two changed at once, until someone chooses. */
  conflicts: readonly Conflict[];
}

/** A job as the server holds it, taken to this device. */
export function replicaOf({
  version,
  job,
  conflicts,
}: {
  version: number;
  job: Job;
  conflicts: readonly Conflict[];
}): Replica {
  return { version, base: job, outbox: [], since: [], shown: job, conflicts };
}

/**
 * Puts the edits on the table into the outbox, as one operation made from the version that was seen.
 * @param settles conflicts that the edits settle
 */
export function postEdits(
  replica: Replica,
  table: Job,
  { id, at, settles = [] }: { id: string; at: string; settles?: readonly string[] },
): Replica {
  const changes = changesBetween(replica.shown, table);
  if (changes.length === 0 && settles.length === 0) return replica;
  const operation: Operation = {
    id,
    jobId: replica.base.id,
    baseVersion: replica.version,
    at,
    changes,
    ...(settles.length === 0 ? {} : { settles: [...settles] }),
  };
  return { ...replica, outbox: [...replica.outbox, operation], shown: table };
}

/**
 * Takes in what the server numbered: operations that follow the version at hand, in order; others are known already, or
 * are left for later. The edits on the table are put into the outbox before.
 * @throws where the operations do not fit the job at hand, which then has to be fetched anew
 */
export function takeIn(replica: Replica, operations: readonly NumberedOperation[]): Replica {
  let { version, base, outbox, conflicts } = replica;
  const taken: NumberedOperation[] = [];
  for (const operation of operations) {
    if (operation.version !== version + 1) continue;
    version += 1;
    base = applyChanges(base, operation.changes);
    outbox = outbox.filter(({ id }) => id !== operation.id);
    const settled = new Set(operation.settles);
    conflicts = [...conflicts, ...operation.conflicts].filter(({ id }) => !settled.has(id));
    taken.push(operation);
  }
  if (taken.length === 0) return replica;
  const eldest = outbox[0]?.baseVersion ?? version;
  const since = [...replica.since, ...taken].filter((one) => one.version > eldest);
  return { version, base, outbox, since, shown: shownFrom(base, outbox, since), conflicts };
}

/** The job fetched anew, with what waits in the outbox done to it. */
export function withBase(
  { outbox }: Replica,
  { version, job, conflicts }: { version: number; job: Job; conflicts: readonly Conflict[] },
): Replica {
  return { version, base: job, outbox, since: [], shown: shownFrom(job, outbox, []), conflicts };
}

/** Lets go of an operation that the server turned down: the job is then without it. */
export function withoutOperation(replica: Replica, id: string): Replica {
  const outbox = replica.outbox.filter((operation) => operation.id !== id);
  return { ...replica, outbox, shown: shownFrom(replica.base, outbox, replica.since) };
}

/** As the server will number them, as far as can be known here. */
function shownFrom(base: Job, outbox: readonly Operation[], since: readonly NumberedOperation[]): Job {
  return outbox.reduce((job, operation) => {
    const later = since.filter(({ version }) => version > operation.baseVersion);
    const rebased = rebase(job, operation, later);
    // Changed where it has to be, so that what is the same stays the same object.
    return rebased.ok ? applyChanges(job, rebased.changes) : job;
  }, base);
}
