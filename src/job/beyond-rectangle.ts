import * as z from "zod";
import { lengthMm } from "./primitives.ts";

/** What stands beside an opening: the corner with the next wall, or straight on the next opening. */
export const besideSchema = z.strictObject({
  angleDeg: z.number().min(60).max(300).default(180).meta({
    description:
      "Angle between this wall and the next, on the side of the room: 180 straight on, 135 in a bay, 90 in a corner",
  }),
  wallMm: lengthMm.meta({
    description:
      "Wall from the opening to the corner; straight on, half of what lies between two openings, mm",
  }),
  shade: z.boolean().default(true).meta({ description: "Another shade hangs on the next wall" }),
  together: z.boolean().optional().meta({
    description: "Both are worked together: on one head or lift, or their cords joined",
  }),
});
export type Beside = z.output<typeof besideSchema>;

export const HEADS = ["angled", "arched"] as const;
/** A head that is not level: the opening is measured to its highest point. */
export const headSchema = z.strictObject({
  kind: z.enum(HEADS).meta({ description: "A straight slope, or an arc of a circle" }),
  fallMm: lengthMm.meta({
    description: "Slope: how much lower the low end lies; arc: its rise above its two ends, mm",
  }),
  high: z.enum(["left", "right"]).default("left").meta({
    description: "Slope: the end that lies higher, seen from the room",
  }),
});
export type Head = z.output<typeof headSchema>;
