import * as z from "zod";
import { daySchema, nameSchema } from "./primitives.ts";

/** How a field of a part is known. A field without a value is not known, whether that is written down or not. */
export const KNOWN_BY = ["measured", "stated", "not-known"] as const;
export type KnownBy = (typeof KNOWN_BY)[number];

/** Where a part comes from, and when it was measured. */
export const partOrigin = {
  supplier: nameSchema.optional().meta({ description: "Who sells it" }),
  measuredOn: daySchema.optional().meta({ description: "Day on which it was measured, as YYYY-MM-DD" }),
};

/** Fields that say what a part is called or where it comes from: nobody measures them. */
const NOT_MEASURED: ReadonlySet<string> = new Set([
  "id",
  "name",
  "supplier",
  "measuredOn",
  "price",
  "pricePerM",
  "spoolPrice",
  "soldByMm",
  "alsoSold",
  "demo",
  "note",
  "photo",
  "repeat",
  "colour",
]);

/** Whether a field of a part is one that can be measured, or stated by the seller. */
export function canBeMeasured(field: string): boolean {
  return !NOT_MEASURED.has(field);
}

/** For each field of the shape that can be measured: how it is known. */
export function knownFields<S extends object>(shape: S) {
  const fields = Object.keys(shape).filter(canBeMeasured) as (keyof S & string)[];
  return z
    .partialRecord(z.enum(fields), z.enum(KNOWN_BY))
    .optional()
    .meta({ description: "How each field is known: measured, stated by the seller, or not known" });
}
