import * as z from "zod";
import { id, name, sizeMm } from "./primitives.ts";

/** What lies on the rack: cloth in bolts and remnants, cord, battens and boards by the length. */
export const stockSchema = z
  .strictObject({
    cloth: z
      .array(
        z.strictObject({
          id,
          name: name.optional(),
          cloth: id,
          widthMm: sizeMm.optional(),
          lengthMm: z.number().min(1).max(1_000_000),
        }),
      )
      .max(2000),
    lengths: z.array(z.strictObject({ id, part: id, lengthMm: z.number().min(1).max(5_000_000) })).max(2000),
  })
  .partial()
  .meta({ description: "Bolts, remnants, cord and lengths at hand" });

export type Stock = z.output<typeof stockSchema>;
