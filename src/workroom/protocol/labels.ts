import * as z from "zod";
import { thingId } from "./fields.ts";

/** Letters and digits that are not taken for each other when they are read off a label. */
export const LABEL_LETTERS = "23456789abcdefghjkmnpqrstuvwxyz";
export const LABEL_CODE_LENGTH = 6;

/** Shades that are to have a label. */
export const newLabelsSchema = z.strictObject({ windows: z.array(thingId).max(2000) });
/** The code on a label, and the shade whose page at the bench it opens. */
export const labelSchema = z.strictObject({
  code: z.string(),
  jobId: thingId,
  windowId: thingId,
});
export const labelsSchema = z.strictObject({ labels: z.array(labelSchema) });

/** A code however it was typed; undefined where it can be none. */
export function readLabelCode(typed: string): string | undefined {
  const code = typed.toLowerCase().replace(/[\s-]/g, "");
  const isCode = code.length === LABEL_CODE_LENGTH && [...code].every((one) => LABEL_LETTERS.includes(one));
  return isCode ? code : undefined;
}

export type Label = z.output<typeof labelSchema>;
