import * as z from "zod";
import { daySchema } from "./primitives.ts";

/** Day of a test. */
const on = daySchema.optional().meta({ description: "Day of the test, as YYYY-MM-DD" });
const forceN = z.number().min(0.01).max(5000);

/** The five tests of a part at the bench, with what is read at each. Lengths in mm, forces in N. */
const gapTest = z.strictObject({
  gapMm: z.number().min(0).max(6).meta({ description: "Thickest feeler that goes in beside the roller, mm" }),
  on,
});

const holdTest = z.strictObject({
  readingsN: z
    .array(forceN)
    .min(1)
    .max(20)
    .meta({ description: "Pull at which one locked cord slipped, time by time, N" }),
  cordDiameterMm: z.number().min(0.3).max(6).meta({ description: "Diameter of the cord in the test, mm" }),
  on,
});

const turnsTest = z.strictObject({
  turns: z.number().int().min(5).max(200).meta({ description: "Turns side by side round a pencil" }),
  widthMm: z.number().min(1).max(500).meta({ description: "Width of all turns together, mm" }),
  on,
});

const stretchTest = z.strictObject({
  lengthMm: z
    .number()
    .min(100)
    .max(20_000)
    .meta({ description: "Length of the cord under its own weight, mm" }),
  grewMm: z.number().min(0).max(5000).meta({ description: "What it grew by under the pull, mm" }),
  pullN: forceN.meta({ description: "Weight hung on it, N" }),
  on,
});

const frictionTest = z.strictObject({
  raisesN: forceN.meta({ description: "Over a quarter turn: reading that just raises a weight, N" }),
  lowersN: forceN.meta({ description: "Reading that just lets it sink, N" }),
  on,
});

const tests = "Tests at the bench; the planning takes their results before what the seller states";

export const lockTests = z
  .strictObject({ gap: gapTest.optional(), hold: holdTest.optional() })
  .optional()
  .meta({ description: tests });
export const cordTests = z
  .strictObject({ turns: turnsTest.optional(), stretch: stretchTest.optional() })
  .optional()
  .meta({ description: tests });
export const eyeTests = z
  .strictObject({ friction: frictionTest.optional() })
  .optional()
  .meta({ description: tests });

export const BENCH_TESTS = {
  gap: gapTest,
  hold: holdTest,
  turns: turnsTest,
  stretch: stretchTest,
  friction: frictionTest,
};
export type BenchTest = keyof typeof BENCH_TESTS;
export type TestReadings<T extends BenchTest> = Omit<z.output<(typeof BENCH_TESTS)[T]>, "on">;
