import * as z from "zod";
import { instant, json, thingId, uniqueId, versionNumber } from "./fields.ts";

/** Most changes of one operation: a job made anew has as many fields. */
const MOST_CHANGES = 50_000;
/** Most operations of one request; a client that was away for longer sends several. */
export const MOST_OPERATIONS = 200;

/** A key of an object, or the item of a list with this id. An index never: another's edit moves it. */
export const pathStepSchema = z.union([
  z.string().min(1).max(200),
  z.strictObject({ id: z.string().min(1).max(200) }),
]);

/**
 * One field of a document, as it was and as it is to be. Without `from` it was not there, without `to` it goes.
 * A list whose items have no ids is one field; a list of plain ids is a set, each of its items `{ id }`.
 */
export const fieldChangeSchema = z.strictObject({
  path: z.array(pathStepSchema).min(1).max(40),
  from: json.optional(),
  to: json.optional(),
});

/** What one person changed in one step, against the version that they saw. */
export const operationSchema = z.strictObject({
  id: uniqueId,
  jobId: thingId,
  baseVersion: versionNumber,
  at: instant.meta({ description: "By the clock of the device, which is shown and never trusted" }),
  changes: z.array(fieldChangeSchema).max(MOST_CHANGES),
  settles: z.array(uniqueId).max(1000).optional().meta({
    description: "Conflicts that this operation settles, whichever value it leaves in the field",
  }),
});

/** Two people changed one field: both values, and what it was, until someone settles it. */
export const conflictSchema = z.strictObject({
  id: uniqueId,
  path: z.array(pathStepSchema),
  base: json.optional().meta({ description: "What both of them had seen" }),
  mine: json.optional().meta({ description: "Of the operation that came in later" }),
  theirs: json.optional().meta({ description: "What stood there when it came in" }),
  version: versionNumber.meta({ description: "Version that the later operation made" }),
  person: uniqueId.meta({ description: "Whose operation that was" }),
  theirPerson: uniqueId.optional().meta({ description: "Who had changed it before" }),
});

/** An operation as the server took it: rebased on what came before, numbered, with who and when. */
export const numberedOperationSchema = z.strictObject({
  id: uniqueId,
  jobId: thingId,
  version: versionNumber.min(1).meta({ description: "Version of the job that it made" }),
  person: uniqueId,
  at: instant.meta({ description: "When the server took it" }),
  changes: z.array(fieldChangeSchema).meta({ description: "What it changed of the version before its own" }),
  conflicts: z.array(conflictSchema),
  settles: z.array(uniqueId),
});

export const sentOperationsSchema = z.strictObject({
  operations: z.array(operationSchema).min(1).max(MOST_OPERATIONS),
});

const issueSchema = z.strictObject({ field: z.string(), given: z.string(), wanted: z.string() });

/** One answer for each operation, in their order; the same answer however often the operation is sent. */
export const operationAnswerSchema = z.discriminatedUnion("ok", [
  z.strictObject({ ok: z.literal(true), operation: numberedOperationSchema }),
  z.strictObject({ ok: z.literal(false), id: uniqueId, issues: z.array(issueSchema) }),
]);
export const operationAnswersSchema = z.strictObject({
  version: versionNumber,
  answers: z.array(operationAnswerSchema),
});

export const operationsPageSchema = z.strictObject({
  version: versionNumber.meta({ description: "Newest version of the job" }),
  operations: z.array(numberedOperationSchema),
  more: z.boolean(),
});

/** Why a request was turned down: a sentence, and the fields where the fault is in them. */
export const refusalSchema = z.strictObject({ refused: z.string(), issues: z.array(issueSchema) });

export type PathStep = z.output<typeof pathStepSchema>;
export type FieldChange = z.output<typeof fieldChangeSchema>;
export type Operation = z.output<typeof operationSchema>;
export type Conflict = z.output<typeof conflictSchema>;
export type NumberedOperation = z.output<typeof numberedOperationSchema>;
export type OperationAnswer = z.output<typeof operationAnswerSchema>;
export type OperationAnswers = z.output<typeof operationAnswersSchema>;
export type OperationsPage = z.output<typeof operationsPageSchema>;
export type RoomRefusal = z.output<typeof refusalSchema>;
