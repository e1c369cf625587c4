import * as z from "zod";
import { id, money, name, note, partMm, sizeMm } from "./primitives.ts";

const part = {
  id,
  name,
  price: money.optional().meta({
    description: "Price of what is sold: one piece, one pack, or one stock length, in the job's currency",
  }),
  demo: z.boolean().optional().meta({ description: "Invented for demonstration: measure your own part" }),
  note: note.optional(),
};

/**
 * A cord lock: a smooth roller and a toothed one in a housing, with wires that divide it into slots.
 * Lengths are along the board, widths across it (the roller's axis), heights downwards.
 */
export const cordLockSchema = z.strictObject({
  ...part,
  housingLengthMm: partMm,
  housingWidthMm: partMm,
  housingHeightMm: partMm,
  dividerWires: z
    .number()
    .int()
    .min(0)
    .max(12)
    .meta({ description: "Wires between the rollers; slots = wires + 1" }),
  cordsMax: z.number().int().min(1).max(40).meta({ description: "Most cords it takes" }),
  cordMinMm: z
    .number()
    .min(0.3)
    .max(6)
    .optional()
    .meta({ description: "Thinnest cord that it is made for, mm" }),
  cordMaxMm: z
    .number()
    .min(0.3)
    .max(6)
    .optional()
    .meta({ description: "Thickest cord that it is made for, mm" }),
  cordNominalMm: z
    .number()
    .min(0.3)
    .max(6)
    .optional()
    .meta({ description: "The one diameter stated, where no range is, mm" }),
  thinCordMm: z
    .number()
    .min(0.3)
    .max(6)
    .optional()
    .meta({ description: "Cord of this diameter or thinner goes in inner slots only, mm" }),
  thinCordsMax: z
    .number()
    .int()
    .min(1)
    .max(40)
    .optional()
    .meta({ description: "Most such thin cords it takes" }),
  endGapMm: z
    .number()
    .min(0)
    .max(6)
    .optional()
    .meta({ description: "Gap between roller end and housing, measured by feeler, mm" }),
  rollerDiameterMm: z.number().min(2).max(40).optional(),
  screws: z.number().int().min(1).max(6).default(2),
  massG: z.number().min(0).max(2000).optional(),
});

export const cordSchema = z.strictObject({
  ...part,
  diameterMm: z.number().min(0.3).max(6),
  massGPerM: z.number().min(0).max(100).optional(),
  breakingN: z
    .number()
    .min(1)
    .max(20_000)
    .optional()
    .meta({ description: "Breaking strength stated by its maker, N" }),
  pricePerM: money.optional(),
  spoolMm: z.number().min(100).max(5_000_000).optional().meta({ description: "Length on one spool, mm" }),
});

export const barSchema = z.strictObject({
  ...part,
  material: z.enum(["steel", "aluminium", "wood", "plastic"]),
  widthMm: partMm.meta({ description: "Face seen from the room, mm" }),
  thicknessMm: partMm,
  round: z.boolean().optional().meta({ description: "A rod of this diameter (width = thickness)" }),
  massGPerM: z
    .number()
    .min(1)
    .max(20_000)
    .optional()
    .meta({ description: "Weighed mass per metre; else from section and density" }),
  stockMm: sizeMm.optional().meta({ description: "Length in which it is sold, mm" }),
});

export const boardSchema = z.strictObject({
  ...part,
  depthMm: partMm.meta({ description: "From wall or glass towards the room, mm" }),
  thicknessMm: partMm.meta({ description: "Vertical, mm" }),
  densityKgM3: z.number().min(100).max(1500).optional(),
  stockMm: sizeMm.optional(),
});

export const ringSchema = z.strictObject({
  ...part,
  diameterMm: partMm,
  massG: z.number().min(0).max(100).optional(),
  packOf: z.number().int().min(1).max(10_000).optional(),
});

export const eyeSchema = z.strictObject({
  ...part,
  outsideDiameterMm: partMm.meta({ description: "Outside diameter of the eye, mm" }),
  friction: z
    .number()
    .min(0)
    .max(1)
    .optional()
    .meta({ description: "Coefficient of friction of cord on the eye" }),
  packOf: z.number().int().min(1).max(10_000).optional(),
});

export const hardwareSchema = z
  .strictObject({
    locks: z.array(cordLockSchema).max(500).optional(),
    cords: z.array(cordSchema).max(500).optional(),
    bars: z.array(barSchema).max(500).optional(),
    ribs: z.array(barSchema).max(500).optional(),
    boards: z.array(boardSchema).max(500).optional(),
    rings: z.array(ringSchema).max(500).optional(),
    eyes: z.array(eyeSchema).max(500).optional(),
  })
  .meta({ description: "The maker's own parts, beside the catalogue" });

export type CordLock = z.output<typeof cordLockSchema>;
export type Cord = z.output<typeof cordSchema>;
export type Bar = z.output<typeof barSchema>;
export type Board = z.output<typeof boardSchema>;
export type Ring = z.output<typeof ringSchema>;
export type Eye = z.output<typeof eyeSchema>;
export type Hardware = z.output<typeof hardwareSchema>;
