import * as z from "zod";
import { daySchema } from "../../job/index.ts";
import { instant, thingId, uniqueId } from "./fields.ts";

/** How far a shade has come, in the order of the work. */
export const WORK_STATES = [
  "measured",
  "quoted",
  "ordered",
  "cut",
  "sewn",
  "rigged",
  "hung",
  "handed-over",
] as const;
export type WorkState = (typeof WORK_STATES)[number];
const workState = z.enum(WORK_STATES);

/** Where one shade is. Steps ticked are in the job document, `ticks` of its window. */
export const shadeWorkSchema = z.strictObject({
  jobId: thingId,
  windowId: thingId,
  state: workState.optional(),
  due: daySchema.optional(),
  holder: uniqueId.optional().meta({ description: "Who has it" }),
  changedBy: uniqueId,
  changedAt: instant,
});
export const workInHandSchema = z.strictObject({ shades: z.array(shadeWorkSchema) });

/** What is left out stays; null takes it away. The same id is done once, however often it is sent. */
export const workChangeSchema = z.strictObject({
  id: uniqueId,
  jobId: thingId,
  windowId: thingId,
  at: instant,
  state: workState.nullable().optional(),
  due: daySchema.nullable().optional(),
  holder: uniqueId.nullable().optional(),
});
export const workChangesSchema = z.strictObject({ changes: z.array(workChangeSchema).min(1).max(1000) });

/** Who changed what of one shade, newest first. */
export const workEntrySchema = workChangeSchema.extend({ person: uniqueId });
export const workEntriesSchema = z.strictObject({ entries: z.array(workEntrySchema) });

export type ShadeWork = z.output<typeof shadeWorkSchema>;
export type WorkChange = z.output<typeof workChangeSchema>;
