import * as z from "zod";
import { LIFT_KINDS, REAR_GUIDES } from "./making.ts";
import { lengthMm } from "./primitives.ts";

/** What is to be done to a shade that hangs already. */
export const EXISTING_TASKS = [
  "restring",
  "fit-lock",
  "replace-lock",
  "go-cordless",
  "even-rows",
  "add-rows",
  "add-columns",
  "make-safer",
] as const;
export type ExistingTask = (typeof EXISTING_TASKS)[number];
export const EXISTING_TASK_WORDS: Record<ExistingTask, string> = {
  restring: "new cords",
  "fit-lock": "fit a lock",
  "replace-lock": "replace its lock",
  "go-cordless": "no cord at the front any more",
  "even-rows": "sew its rings at even rows",
  "add-rows": "add rows of rings",
  "add-columns": "add columns of rings",
  "make-safer": "make it safer for children",
};

/** A shade that hangs already: measured as it is, and what is to be done to it. Nothing of its cloth is cut anew. */
export const existingSchema = z
  .strictObject({
    tasks: z.array(z.enum(EXISTING_TASKS)).min(1).max(EXISTING_TASKS.length).meta({
      description:
        "restring: new cords; fit-lock: a lock on one strung for a cleat; replace-lock; go-cordless: no cord at the front; even-rows: rings sewn anew at even rows; add-rows: rings between rows too far apart; add-columns: rings, cords and eyes between columns too far apart; make-safer: rows added, and the lift proposed for the place",
    }),
    strung: z.enum(LIFT_KINDS).default("cleat").meta({ description: "How it is raised now" }),
    rearCords: z.enum(REAR_GUIDES).optional().meta({
      description: "How its cords run up the back now: bare through rings, or in sleeves that stay",
    }),
    rowsFromHemMm: z.array(lengthMm).min(1).max(200).meta({
      description:
        "Rows of rings above the finished hem, each as measured, at the left edge where they slant, mm",
    }),
    rowsFromHemRightMm: z.array(lengthMm).min(1).max(200).optional().meta({
      description:
        "Rows that slant: the same rows above the hem at the right edge; as at the left where absent, mm",
    }),
    hemFallMm: lengthMm.optional().meta({
      description:
        "Hem that slopes: how much lower its low end hangs than the other, mm; the length is measured to the low end",
    }),
    hemLow: z.enum(["left", "right"]).optional().meta({
      description:
        "Hem that slopes: the end that hangs lower, seen from the room; the right one where absent",
    }),
    columnsFromLeftMm: z.array(lengthMm).min(2).max(60).meta({
      description: "Columns of rings from the left finished edge seen from the room, each as measured, mm",
    }),
    massKg: z.number().min(0.01).max(200).optional().meta({
      description:
        "Cloth, bar and rings weighed together, without the board, kg; taken from the cloths where absent",
    }),
    cordYears: z
      .number()
      .min(0)
      .max(100)
      .optional()
      .meta({ description: "Age of the cords that are in, years" }),
    ringsTried: z.boolean().optional().meta({ description: "Every ring was pulled at, and held" }),
  })
  .meta({ description: "The shade hangs already: as it was measured, and what is to be done" });
export type Existing = z.output<typeof existingSchema>;
