import * as z from "zod";
import { instant, shownName, thingId, token, uniqueId, versionNumber } from "./fields.ts";

/** A page for the client, of the job as it is now: later edits do not show on it. */
export const newClientLinkSchema = z.strictObject({ days: z.int().min(1).max(365).default(60) });
export const clientLinkSchema = z.strictObject({
  id: uniqueId,
  jobId: thingId,
  version: versionNumber,
  madeBy: uniqueId,
  madeAt: instant,
  until: instant,
  takenBackAt: instant.optional(),
  acceptedAt: instant.optional(),
  acceptedBy: z.string().optional().meta({ description: "The name that the client typed" }),
});
export const clientLinksSchema = z.strictObject({ links: z.array(clientLinkSchema) });
export const madeClientLinkSchema = z.strictObject({ link: clientLinkSchema, token });

export const clientLookSchema = z.strictObject({ token });
export const clientAcceptSchema = z.strictObject({ token, name: shownName });

/** All that a client gets to see; texts are ready to be shown. */
export const clientPageSchema = z.strictObject({
  workroom: shownName,
  maker: z.string().optional().meta({ description: "Name and address as on the quote, line by line" }),
  job: shownName,
  client: z.string().optional(),
  number: z.string().optional(),
  shades: z.array(
    z.strictObject({
      room: z.string(),
      name: z.string(),
      words: z.string().meta({ description: "What it is, in one line" }),
      price: z.string().optional(),
      svg: z.string().meta({ description: "The shade as it hangs" }),
    }),
  ),
  totals: z.array(z.strictObject({ name: z.string(), value: z.string() })),
  cautions: z
    .array(z.string())
    .meta({ description: "What was chosen about cords, and what they do to children" }),
  terms: z.string().optional(),
  until: instant,
  acceptedAt: instant.optional(),
  acceptedBy: z.string().optional(),
});

export type ClientLink = z.output<typeof clientLinkSchema>;
export type ClientPage = z.output<typeof clientPageSchema>;
