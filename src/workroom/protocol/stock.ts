import * as z from "zod";
import { instant, thingId, uniqueId } from "./fields.ts";

const reservedItem = z.strictObject({
  stock: thingId.meta({ description: "Id of a bolt, remnant or length in the shop" }),
  lengthMm: z.number().positive().max(5_000_000).optional().meta({
    description: "How much of it, mm; left out: all of it",
  }),
});

/** What a job promises itself of the stock; it takes the place of what it promised before. */
export const reserveSchema = z.strictObject({ items: z.array(reservedItem).max(2000) });
export const reservationSchema = reservedItem.extend({ jobId: thingId, person: uniqueId, at: instant });
export const reservationsSchema = z.strictObject({ reservations: z.array(reservationSchema) });

export type Reservation = z.output<typeof reservationSchema>;
