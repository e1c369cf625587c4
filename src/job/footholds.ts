import * as z from "zod";
import { lengthMm, noteSchema } from "./primitives.ts";

/** What a child climbs on at a window. */
export const FOOTHOLD_KINDS = [
  "bed",
  "cot",
  "chair",
  "window-seat",
  "stairs",
  "landing",
  "furniture",
] as const;
export type FootholdKind = (typeof FOOTHOLD_KINDS)[number];
/** As they stand in a sentence: “measured from the …”. */
export const FOOTHOLD_NAMES: Record<FootholdKind, string> = {
  bed: "bed",
  cot: "cot",
  chair: "chair or sofa",
  "window-seat": "window seat",
  stairs: "stairs",
  landing: "landing",
  furniture: "furniture",
};

export const footholdSchema = z.strictObject({
  kind: z.enum(FOOTHOLD_KINDS),
  heightMm: lengthMm.meta({ description: "Where a child stands on it, above the floor, mm" }),
  note: noteSchema.optional(),
});
export type Foothold = z.output<typeof footholdSchema>;

interface Climbable {
  footholds?: readonly Foothold[] | undefined;
  footholdMm?: number | undefined;
}

/** All that a child can stand on at a window; undefined where nobody said. Files of before have one height alone. */
export function footholdsOf({ footholds, footholdMm }: Climbable): readonly Foothold[] | undefined {
  if (footholds !== undefined || footholdMm === undefined) return footholds;
  return footholdMm === 0 ? [] : [{ kind: "furniture", heightMm: footholdMm }];
}

/** The one from which a child reaches highest. */
export function highestFoothold(footholds: readonly Foothold[] = []): Foothold | undefined {
  let highest: Foothold | undefined;
  for (const one of footholds) if (highest === undefined || one.heightMm > highest.heightMm) highest = one;
  return highest;
}
