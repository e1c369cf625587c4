import * as z from "zod";
import type { Stock } from "../../job/index.ts";
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

type ClothPiece = NonNullable<Stock["cloth"]>[number];
type LengthPiece = NonNullable<Stock["lengths"]>[number];

/**
 * Whether several jobs can share a piece by length: a bolt of full width, plain all along. A remnant goes to one job as
 * a whole, and so does cloth with a flaw or a known place of its pattern, which the next job would find elsewhere. A
 * length of cord, bar or board is one job's.
 */
export function goesByLength(piece: ClothPiece | LengthPiece): boolean {
  if (!("cloth" in piece)) return false;
  const { widthMm, flaws = [], repeatStartMm, columnStartMm } = piece;
  return [widthMm, repeatStartMm, columnStartMm].every((one) => one === undefined) && flaws.length === 0;
}
