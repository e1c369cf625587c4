import * as z from "zod";
import { instant, thingId, uniqueId, versionNumber } from "./fields.ts";

/** How often a screen says that it is still there, and how long the others believe it. */
export const PRESENCE_EVERY_S = 15;
export const PRESENCE_LASTS_S = 40;

/** Where someone is at work. */
export const herePresenceSchema = z.strictObject({
  jobId: thingId.optional(),
  windowId: thingId.optional(),
});
export const presenceSchema = herePresenceSchema.extend({ session: uniqueId, person: uniqueId });

/**
 * What has changed since `since`, or since the stream began: a wake-up, after which a client asks for what it lacks.
 * It comes as data of server-sent events, and from the address to ask again and again where those do not get through.
 */
export const newsSchema = z.strictObject({
  now: instant.meta({ description: "To ask from next time; the server's clock" }),
  jobs: z.array(z.strictObject({ id: thingId, version: versionNumber })).meta({
    description:
      "Jobs of which something has changed: themselves, what a client said, or what of the shop is promised",
  }),
  isShelfChanged: z.boolean().meta({ description: "A job came, went into the bin or came back" }),
  isWorkChanged: z.boolean(),
  here: z.array(presenceSchema),
});

export type Presence = z.output<typeof presenceSchema>;
export type News = z.output<typeof newsSchema>;
