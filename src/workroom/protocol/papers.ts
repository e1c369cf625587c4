import * as z from "zod";
import { instant, thingId, uniqueId, versionNumber } from "./fields.ts";

export const ASKED_PAPER_KINDS = ["workbook", "pictures", "cutting"] as const;

/** Asks the server to make what takes long; a worker does it in its turn. */
export const newPaperSchema = z.strictObject({ id: uniqueId, kind: z.enum(ASKED_PAPER_KINDS) });
export const askedPaperSchema = z.strictObject({
  id: uniqueId,
  jobId: thingId,
  kind: z.enum(ASKED_PAPER_KINDS),
  version: versionNumber,
  state: z.enum(["waiting", "in-hand", "done", "failed"]),
  askedAt: instant,
  doneAt: instant.optional(),
  why: z.string().optional().meta({ description: "Why it failed" }),
});
export type AskedPaper = z.output<typeof askedPaperSchema>;
