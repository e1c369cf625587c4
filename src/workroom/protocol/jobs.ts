import * as z from "zod";
import { jobSchema } from "../../job/index.ts";
import { instant, shownName, thingId, uniqueId, versionNumber } from "./fields.ts";
import { conflictSchema } from "./operation.ts";

export const shelvedJobSchema = z.strictObject({
  id: thingId,
  name: shownName,
  client: z.string().optional(),
  isDemo: z.boolean(),
  windows: z.int(),
  version: versionNumber,
  openConflicts: z.int(),
  madeBy: uniqueId,
  madeAt: instant,
  changedBy: uniqueId,
  changedAt: instant,
  binnedAt: instant.optional(),
});
export const shelfSchema = z.strictObject({ jobs: z.array(shelvedJobSchema) });

/** A job as the server holds it. */
export const heldJobSchema = z.strictObject({
  version: versionNumber,
  job: jobSchema,
  conflicts: z.array(conflictSchema),
});

/** `request` tells the same request sent twice from a second job with the same id. */
export const newJobSchema = z.strictObject({ request: uniqueId, job: z.unknown() });
export const copyJobSchema = z.strictObject({ request: uniqueId, id: thingId, name: shownName });

/** One person's work on a job on one day. */
export const historyEntrySchema = z.strictObject({
  day: z.string(),
  person: uniqueId,
  fromVersion: versionNumber,
  toVersion: versionNumber,
  changes: z.int(),
});
export const jobHistorySchema = z.strictObject({ entries: z.array(historyEntrySchema) });

/** Makes the job again what it was at a version: an operation like any other, which can be taken back the same way. */
export const restoreJobSchema = z.strictObject({ operation: uniqueId, version: versionNumber });

/** Days that a job stays in the bin. */
export const JOB_BIN_DAYS = 30;

export type ShelvedJob = z.output<typeof shelvedJobSchema>;
export type HeldJob = z.output<typeof heldJobSchema>;
export type HistoryEntry = z.output<typeof historyEntrySchema>;
