import * as z from "zod";
import { id, lengthMm, nameSchema, sizeMm } from "./primitives.ts";
import { LONGEST_BOLT_MM } from "./stock.ts";

/** A piece of a shade as the cutting plan names it: window and part. */
const pieceId = z.string().min(1).max(200);
const alongMm = z.number().min(0).max(LONGEST_BOLT_MM);

/** Pieces that the maker has laid by hand: the cutting plan leaves them there and cuts the rest round them. */
export const laidPiecesSchema = z
  .array(
    z.strictObject({
      cloth: id,
      bolt: id.optional().meta({ description: "Id of a bolt in stock; left out: the new cloth" }),
      piece: pieceId,
      xMm: lengthMm.meta({ description: "From the left selvedge, mm" }),
      yMm: alongMm.meta({ description: "From the end that is cut first, mm" }),
      turn: z
        .union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)])
        .default(0)
        .meta({ description: "Degrees, clockwise; 0: its top towards the end that is cut first" }),
    }),
  )
  .max(2000)
  .meta({ description: "Pieces laid by hand on their cloth" });

/** What is cut already: the pieces need no more cloth, and what was left of the bolts is in stock. */
export const cutClothSchema = z
  .array(
    z.strictObject({
      cloth: id,
      boughtMm: alongMm
        .default(0)
        .meta({ description: "New cloth that was bought for this job and is cut into, mm" }),
      pieces: z
        .array(
          z.strictObject({
            piece: pieceId,
            widthMm: sizeMm,
            lengthMm: sizeMm,
            lot: nameSchema.optional().meta({
              description:
                "Dye lot that it was cut from; the rest of its shade that is seen comes from it, too",
            }),
          }),
        )
        .max(20_000)
        .meta({ description: "As they were cut" }),
      bolts: z
        .array(
          z.strictObject({
            bolt: id.meta({ description: "Id of the bolt or remnant" }),
            cutMm: alongMm.meta({ description: "Cut off it along its length, mm" }),
          }),
        )
        .max(2000)
        .optional()
        .meta({ description: "What was cut off bolts and remnants in stock; they are shorter by it" }),
    }),
  )
  .max(500)
  .meta({ description: "What is cut already, cloth by cloth" });

export type LaidPiece = z.output<typeof laidPiecesSchema>[number];
export type CutCloth = z.output<typeof cutClothSchema>[number];

/** So much is cut off a bolt or remnant along its length, mm. */
export function cutOffBoltMm(cutCloth: readonly CutCloth[], boltId: string): number {
  return cutCloth
    .flatMap(({ bolts = [] }) => bolts)
    .reduce((sum, { bolt, cutMm }) => (bolt === boltId ? sum + cutMm : sum), 0);
}
