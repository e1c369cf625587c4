import * as z from "zod";
import { id, MOST_PARTS, moneySchema, nameSchema, noteSchema, partMm, sizeMm } from "./primitives.ts";

const part = {
  id,
  name: nameSchema,
  price: moneySchema.optional().meta({
    description: "Price of what is sold: one piece, one pack, or one stock length, in the job's currency",
  }),
  demo: z.boolean().optional().meta({ description: "Invented for demonstration: measure your own part" }),
  note: noteSchema.optional(),
};

export const soldLengthSchema = z.strictObject({
  lengthMm: sizeMm,
  price: moneySchema.optional().meta({ description: "Price of one such length, in the job's currency" }),
});
/** Most lengths in which one part is sold. */
export const MOST_SOLD_LENGTHS = 20;

/** Other lengths in which it can be bought, each with its price. */
const alsoSold = z
  .array(soldLengthSchema)
  .max(MOST_SOLD_LENGTHS)
  .optional()
  .meta({ description: "Other lengths in which it is sold" });

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
  stretchAt10N: z
    .number()
    .min(0)
    .max(0.5)
    .optional()
    .meta({ description: "Stretch under a pull of 10 N (1 kg hung on it), share of its length" }),
  pricePerM: moneySchema.optional(),
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
  alsoSold,
});

export const boardSchema = z.strictObject({
  ...part,
  depthMm: partMm.meta({ description: "From wall or glass towards the room, mm" }),
  thicknessMm: partMm.meta({ description: "Vertical, mm" }),
  densityKgM3: z.number().min(100).max(1500).optional(),
  stockMm: sizeMm.optional(),
  alsoSold,
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
  pulleyShare: z
    .number()
    .min(0.5)
    .max(1)
    .optional()
    .meta({ description: "A pulley: share of the pull that it passes on at a quarter turn" }),
  packOf: z.number().int().min(1).max(10_000).optional(),
});

export const TUBE_METALS = ["aluminium", "steel"] as const;

/**
 * A lift tube under the board, with a spool above each column that winds up its cord.
 * Without a stated winding width the cord is taken to wind upon itself, which grows fastest.
 */
export const tubeSchema = z.strictObject({
  ...part,
  diameterMm: partMm.meta({ description: "Outside of the tube, mm" }),
  massGPerM: z.number().min(1).max(20_000).optional(),
  wallMm: z.number().min(0.1).max(50).optional().meta({ description: "Wall of the tube, mm" }),
  metal: z.enum(TUBE_METALS).optional(),
  stockMm: sizeMm.optional().meta({ description: "Length in which it is sold, mm" }),
  spoolCoreMm: partMm.optional().meta({
    description: "Diameter on which the cord winds, mm; the tube's own where none is given",
  }),
  spoolFlangeMm: partMm.optional().meta({ description: "Outside diameter of the spool's flanges, mm" }),
  spoolLengthMm: partMm.default(20).meta({ description: "Length of one spool along the tube, mm" }),
  spoolWindMm: partMm.optional().meta({ description: "Clear width between the flanges, mm" }),
  spoolPrice: moneySchema.optional(),
});

export const DRIVE_KINDS = ["spring", "wand", "loop", "motor"] as const;
export const POWERS = ["mains", "low-voltage"] as const;

/** What turns a lift tube. Length is along the board, depth from wall to room, height downwards. */
export const driveSchema = z.strictObject({
  ...part,
  kind: z.enum(DRIVE_KINDS),
  lengthMm: partMm,
  heightMm: partMm,
  depthMm: partMm,
  massMaxKg: z.number().min(0.1).max(500).optional().meta({
    description: "Heaviest shade that its maker states, kg",
  }),
  massMinKg: z.number().min(0).max(500).optional().meta({
    description: "Spring: lightest shade that its maker states, kg",
  }),
  ratio: z.number().min(0.1).max(200).default(1).meta({
    description: "Turns of wheel or wand for one turn of the tube",
  }),
  wheelMm: partMm.optional().meta({ description: "Loop: diameter on which the loop runs, mm" }),
  crankMm: partMm.optional().meta({ description: "Wand: radius of the crank at its lower end, mm" }),
  detachable: z.boolean().optional().meta({ description: "Wand: taken off when it is not in use" }),
  efficiency: z.number().min(0.05).max(1).optional().meta({
    description: "Share of the hand's work that reaches the tube",
  }),
  torqueNm: z.number().min(0.01).max(1000).optional().meta({ description: "Motor: rated torque, N·m" }),
  turnsPerMin: z
    .number()
    .min(0.1)
    .max(1000)
    .optional()
    .meta({ description: "Motor: turns of the tube a minute" }),
  power: z.enum(POWERS).optional().meta({ description: "Motor: mains, or battery and low voltage" }),
  screws: z.number().int().min(1).max(6).default(2),
  massG: z.number().min(0).max(20_000).optional(),
});

export const hardwareSchema = z
  .strictObject({
    locks: z.array(cordLockSchema).max(MOST_PARTS).optional(),
    cords: z.array(cordSchema).max(MOST_PARTS).optional(),
    bars: z.array(barSchema).max(MOST_PARTS).optional(),
    ribs: z.array(barSchema).max(MOST_PARTS).optional(),
    boards: z.array(boardSchema).max(MOST_PARTS).optional(),
    rings: z.array(ringSchema).max(MOST_PARTS).optional(),
    eyes: z.array(eyeSchema).max(MOST_PARTS).optional(),
    tubes: z.array(tubeSchema).max(MOST_PARTS).optional(),
    drives: z.array(driveSchema).max(MOST_PARTS).optional(),
  })
  .meta({ description: "The maker's own parts, beside the catalogue" });

export type CordLock = z.output<typeof cordLockSchema>;
export type Cord = z.output<typeof cordSchema>;
export type Bar = z.output<typeof barSchema>;
export type Board = z.output<typeof boardSchema>;
export type Ring = z.output<typeof ringSchema>;
export type Eye = z.output<typeof eyeSchema>;
export type Tube = z.output<typeof tubeSchema>;
export type Drive = z.output<typeof driveSchema>;
export type DriveKind = (typeof DRIVE_KINDS)[number];
export type Hardware = z.output<typeof hardwareSchema>;
