import * as z from "zod";
import { cordTests, eyeTests, lockTests } from "./bench-tests.ts";
import { knownFields, partOrigin } from "./part-origin.ts";
import { id, MOST_PARTS, moneySchema, nameSchema, noteSchema, partMm, sizeMm } from "./primitives.ts";

const part = {
  id,
  name: nameSchema,
  ...partOrigin,
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
const lockShape = {
  ...part,
  housingLengthMm: partMm.optional(),
  housingWidthMm: partMm.optional(),
  housingHeightMm: partMm.optional(),
  dividerWires: z
    .number()
    .int()
    .min(0)
    .max(12)
    .optional()
    .meta({ description: "Wires between the rollers; slots = wires + 1" }),
  slots: z
    .number()
    .int()
    .min(1)
    .max(13)
    .optional()
    .meta({ description: "Slots that the wires make, in place of dividerWires: one more" }),
  cordsMax: z
    .number()
    .int()
    .min(1)
    .max(40)
    .optional()
    .meta({ description: "Most cords it takes; left out where nobody states it" }),
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
  screws: z.number().int().min(1).max(6).optional(),
  massG: z.number().min(0).max(2000).optional(),
};
export const cordLockSchema = z.strictObject({
  ...lockShape,
  known: knownFields(lockShape),
  tests: lockTests,
});

const cordShape = {
  ...part,
  diameterMm: z.number().min(0.3).max(6).optional(),
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
};
export const cordSchema = z.strictObject({ ...cordShape, known: knownFields(cordShape), tests: cordTests });

const barShape = {
  ...part,
  material: z.enum(["steel", "aluminium", "wood", "plastic"]).optional(),
  widthMm: partMm.optional().meta({ description: "Face seen from the room, mm" }),
  thicknessMm: partMm.optional(),
  round: z.boolean().optional().meta({ description: "A rod of this diameter (width = thickness)" }),
  massGPerM: z
    .number()
    .min(1)
    .max(20_000)
    .optional()
    .meta({ description: "Weighed mass per metre; else from section and density" }),
  stockMm: sizeMm.optional().meta({ description: "Length in which it is sold, mm" }),
  alsoSold,
};
export const barSchema = z.strictObject({ ...barShape, known: knownFields(barShape) });

const boardShape = {
  ...part,
  depthMm: partMm.optional().meta({ description: "From wall or glass towards the room, mm" }),
  thicknessMm: partMm.optional().meta({ description: "Vertical, mm" }),
  densityKgM3: z.number().min(100).max(1500).optional(),
  stockMm: sizeMm.optional(),
  alsoSold,
};
export const boardSchema = z.strictObject({ ...boardShape, known: knownFields(boardShape) });

const ringShape = {
  ...part,
  diameterMm: partMm.optional(),
  massG: z.number().min(0).max(100).optional(),
  packOf: z.number().int().min(1).max(10_000).optional(),
};
export const ringSchema = z.strictObject({ ...ringShape, known: knownFields(ringShape) });

const eyeShape = {
  ...part,
  outsideDiameterMm: partMm.optional().meta({ description: "Outside diameter of the eye, mm" }),
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
};
export const eyeSchema = z.strictObject({ ...eyeShape, known: knownFields(eyeShape), tests: eyeTests });

export const TUBE_METALS = ["aluminium", "steel"] as const;

/**
 * A lift tube under the board, with a spool above each column that winds up its cord.
 * Without a stated winding width the cord is taken to wind upon itself, which grows fastest.
 */
const tubeShape = {
  ...part,
  diameterMm: partMm.optional().meta({ description: "Outside of the tube, mm" }),
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
};
export const tubeSchema = z.strictObject({ ...tubeShape, known: knownFields(tubeShape) });

export const DRIVE_KINDS = ["spring", "wand", "loop", "motor"] as const;
export const POWERS = ["mains", "low-voltage"] as const;

/** What turns a lift tube. Length is along the board, depth from wall to room, height downwards. */
const driveShape = {
  ...part,
  kind: z.enum(DRIVE_KINDS).optional(),
  lengthMm: partMm.optional(),
  heightMm: partMm.optional(),
  depthMm: partMm.optional(),
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
};
export const driveSchema = z.strictObject({ ...driveShape, known: knownFields(driveShape) });

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

export type Hardware = z.output<typeof hardwareSchema>;
export type DriveKind = (typeof DRIVE_KINDS)[number];
