import * as z from "zod";
import { lengthMm, sizeMm } from "./primitives.ts";

/** Scissors that go from edge to edge along a straight edge, or as they like. */
export const CUT_WAYS = ["straight", "free"] as const;
export type CutWay = (typeof CUT_WAYS)[number];

/** Cloth on the table in one layer, or in two. */
export const CLOTH_SPREADS = ["single", "doubled"] as const;
export const HANDS = ["right", "left"] as const;

/** How the workshop cuts cloth and stock lengths, and what it keeps of the rest. */
export const cuttingSchema = z
  .strictObject({
    way: z.enum(CUT_WAYS).meta({ description: "straight: only cuts from edge to edge; free: any" }),
    stages: z.number().int().min(2).max(6).meta({
      description: "Straight cuts: how often the direction may turn; across, along and across again is 3",
    }),
    tableMm: sizeMm.meta({
      description: "Straight cuts: the longest that is cut along at a time, as the table is, mm",
    }),
    spread: z.enum(CLOTH_SPREADS).meta({
      description:
        "single; doubled: two equal lengths of plain cloth lie on each other and are cut at one go",
    }),
    hand: z.enum(HANDS).meta({
      description:
        "Hand that cuts; left: the end of the bolt lies at the right, and tickets measure from there",
    }),
    toleranceMm: z.number().min(0.1).max(20).meta({
      description: "How near to its line a cut is, mm; of what is not seen twice as much",
    }),
    gapMm: z.number().min(0).max(100).meta({ description: "Cloth left between two cuts, mm" }),
    keepClothWidthMm: sizeMm.meta({ description: "A remnant at least so wide goes back into stock, mm" }),
    keepClothLengthMm: sizeMm.meta({ description: "A remnant at least so long goes back into stock, mm" }),
    keepLengthMm: sizeMm.meta({
      description: "An offcut of bar, rib, board or tube at least so long is kept, mm",
    }),
    sawKerfMm: lengthMm.max(20).meta({ description: "Width of the saw line, mm" }),
    seed: z
      .number()
      .int()
      .min(0)
      .max(2 ** 31 - 1)
      .meta({ description: "The same job and seed give the same cutting plan" }),
  })
  .partial()
  .meta({ description: "How cloth and lengths are cut, and what is kept" });

export type Cutting = z.output<typeof cuttingSchema>;
