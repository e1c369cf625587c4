import { type Job, type JobIssue, openJob } from "../../job/index.ts";
import type { FieldChange } from "../protocol/index.ts";
import { asJson, changesBetween } from "./changes.ts";
import type { FieldConflict } from "./conflict.ts";
import { faultsOf, fieldOf } from "./faults.ts";
import { conflictAt, type Met, meet, type NumberedChanges } from "./meet.ts";
import { valueIn } from "./place.ts";
import { JOB_SHAPE } from "./shape.ts";

/** A job with somebody's changes done to it, or what is wrong with them. */
export type Rebased =
  | {
      ok: true;
      job: Job;
      /** What they do to the job as it stood: to be numbered, and done by everybody else. */
      changes: FieldChange[];
      conflicts: FieldConflict[];
    }
  | { ok: false; issues: JobIssue[] };

/**
 * Does changes to a job that went on since they were made. Never throws.
 *
 * A field that nobody else touched gets my value, and so does one that stands as I knew it, since both wrote the same.
 * A field that both changed gets my value, too, since mine is numbered later, and both stand in the conflict. What one
 * took away while the other edited it stays, or comes back, as a conflict. What would leave a job that cannot be opened
 * falls back to what was there, as a conflict.
 *
 * @param later what was numbered since the version from which the changes were made, in its order
 */
export function rebase(
  job: Job,
  { changes }: { changes: readonly FieldChange[] },
  later: readonly NumberedChanges[],
): Rebased {
  const issues = faultsOf(changes);
  if (issues.length > 0) return { ok: false, issues };
  const attempt = attemptAt(job, changes, later);
  // With nothing in between, what does not fit is a fault of the changes themselves.
  if (later.length === 0 && attempt.met.lost.length > 0) {
    return { ok: false, issues: attempt.met.lost.map(({ path }) => lostIssue(path)) };
  }
  if (!attempt.opened.ok && later.length > 0) return withoutMisfits(job, changes, later);
  return rebasedBy(job, attempt, [], later);
}

interface Attempt {
  met: Met;
  opened: ReturnType<typeof openJob>;
}

function attemptAt(job: Job, changes: readonly FieldChange[], later: readonly NumberedChanges[]): Attempt {
  const met = meet(asJson(job), changes, later);
  return { met, opened: openJob(met.document) };
}

function rebasedBy(
  job: Job,
  { met, opened }: Attempt,
  misfits: readonly FieldChange[],
  later: readonly NumberedChanges[],
): Rebased {
  if (!opened.ok) return opened;
  const fallen = [...met.lost, ...misfits].map(({ path, from, to }) =>
    conflictAt(path, { base: from, mine: to, theirs: valueIn(met.document, JOB_SHAPE, path) }, later),
  );
  const conflicts = [...met.conflicts, ...fallen];
  return { ok: true, job: opened.job, changes: changesBetween(job, opened.job), conflicts };
}

/** Leaves out as few changes as the job needs to open. */
function withoutMisfits(
  job: Job,
  changes: readonly FieldChange[],
  later: readonly NumberedChanges[],
): Rebased {
  const fits = (some: readonly FieldChange[]) => attemptAt(job, some, later).opened.ok;
  const kept: FieldChange[] = [];
  let left = [...changes];
  // A change may need one that comes after it, as a window that is put into another room than it is taken from.
  for (let before = -1; before !== left.length; ) {
    before = left.length;
    const added = new Set(fitting(kept, left, fits));
    kept.push(...added);
    left = left.filter((change) => !added.has(change));
  }
  return rebasedBy(job, attemptAt(job, kept, later), left, later);
}

function fitting(
  kept: readonly FieldChange[],
  more: readonly FieldChange[],
  fits: (some: readonly FieldChange[]) => boolean,
): FieldChange[] {
  if (more.length === 0) return [];
  if (fits([...kept, ...more])) return [...more];
  if (more.length === 1) return [];
  const half = Math.ceil(more.length / 2);
  const first = fitting(kept, more.slice(0, half), fits);
  return [...first, ...fitting([...kept, ...first], more.slice(half), fits)];
}

function lostIssue(path: FieldChange["path"]): JobIssue {
  return { field: fieldOf(path), given: "a change", wanted: "a place that this job has" };
}
