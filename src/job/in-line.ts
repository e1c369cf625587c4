import * as z from "zod";
import { cite, sourced } from "../sources/index.ts";
import { inches } from "../units/index.ts";
import { id, lengthMm, spacingMm } from "./primitives.ts";

export const LINE_FOLDS = ["levels", "spacing", "own"] as const;

/** What may be wished of a room in line. */
export const lineWishesSchema = z.strictObject({
  folds: z.enum(LINE_FOLDS).optional().meta({
    description: "levels: rows at equal heights above the floor; spacing: equal spacing alone; own: neither",
  }),
  spacingMm: spacingMm.optional().meta({ description: "Fixed spacing of rows for the whole room, mm" }),
  stack: z.boolean().optional().meta({ description: "Raised hems at one height where that costs little" }),
  motif: z.boolean().optional().meta({ description: "Patterns begin at equal heights above the floor" }),
  mostLowerMm: lengthMm.optional().meta({
    description: "How much lower than it must a raised shade may hang for the sake of the line, mm",
  }),
  without: z.array(id).max(5000).optional().meta({ description: "Windows that keep to themselves, by id" }),
});

/** What the windows of a room share; `true` is the same as nothing wished, which is all of it. */
export const inLineSchema = z.union([z.literal(true), lineWishesSchema]);

/** What was wished of a room in line. */
export type LineWishes = z.output<typeof lineWishesSchema>;
export type InLine = z.output<typeof inLineSchema>;

/** What a room in line gets where the maker said nothing. */
export const IN_LINE_DEFAULTS = {
  folds: sourced("levels", "", cite("our-choice", "rows at equal heights")),
  stack: sourced(true, "", cite("our-choice")),
  motif: sourced(true, "", cite("set-of-shades", "one start line for a set")),
  mostLowerMm: sourced(inches(6), "mm", cite("our-choice", "less than one fold")),
} as const;

export interface ResolvedLine {
  folds: (typeof LINE_FOLDS)[number];
  spacingMm?: number;
  stack: boolean;
  motif: boolean;
  mostLowerMm: number;
  without: readonly string[];
}

/** `true` as the wishes that it stands for. */
export function lineWishes(inLine: InLine): LineWishes {
  return inLine === true ? {} : inLine;
}

export function resolveLine(inLine: InLine): ResolvedLine {
  const own = lineWishes(inLine);
  return {
    folds: own.folds ?? (IN_LINE_DEFAULTS.folds.value as ResolvedLine["folds"]),
    ...(own.spacingMm === undefined ? {} : { spacingMm: own.spacingMm }),
    stack: own.stack ?? IN_LINE_DEFAULTS.stack.value,
    motif: own.motif ?? IN_LINE_DEFAULTS.motif.value,
    mostLowerMm: own.mostLowerMm ?? IN_LINE_DEFAULTS.mostLowerMm.value,
    without: own.without ?? [],
  };
}
