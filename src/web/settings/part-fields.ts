import {
  barSchema,
  boardSchema,
  type Cutting,
  clothSchema,
  cordLockSchema,
  cordSchema,
  cuttingSchema,
  driveSchema,
  eyeSchema,
  type OfferTerms,
  offerSchema,
  type PartEntry,
  type PartKind,
  type Rates,
  type Repeat,
  ratesSchema,
  repeatSchema,
  ringSchema,
  soldLengthSchema,
  tubeSchema,
} from "../../job/index.ts";
import {
  choice,
  count,
  type FieldSpec,
  fine,
  length,
  money,
  number,
  percent,
  perRun,
  run,
  size,
  type TextSpec,
  text,
} from "../inputs/spec.ts";
import { withLimits } from "./limits.ts";

type Fields<T> = { [K in Exclude<keyof T, "id" | "demo">]-?: FieldSpec };
/** Fields of a part but for those that hold more than one value. */
type FieldsOf<K extends PartKind, But extends string = never> = Fields<
  Omit<PartEntry<K>, "known" | "tests" | "alsoSold" | "repeat" | "photo" | But>
>;

const NAME = { ...text("Name", 120), required: true };
const NOTE = { ...text("Note", 4000), lines: true };
/** Where a part comes from, after all that is measured on it. */
const ORIGIN = {
  supplier: text("Supplier", 120),
  measuredOn: {
    ...text("Measured on", 10, "year, month and day, as 2026-05-31"),
    wanted: "a day, as 2026-05-31",
  },
};
const PRICE = money("Price of one");
const GSM_PER_OZ_YD2 = 33.90575;

/** Fields of a cloth that stand beside its repeat. */
export const CLOTH_FIELDS: FieldsOf<"cloths"> = withLimits(clothSchema, {
  name: NAME,
  usableWidthMm: size("Usable width", "selvedges taken off"),
  massGsm: {
    kind: "number",
    label: "Weight",
    min: 1,
    max: 3000,
    metric: { factor: 1, unit: "g/m²" },
    imperial: { factor: 1 / GSM_PER_OZ_YD2, unit: "oz/yd²" },
  },
  thicknessMm: fine("Thickness", 0.01, 50),
  kind: choice("What it is", {
    sheer: "sheer",
    cotton: "cotton",
    linen: "linen",
    velvet: "velvet",
    canvas: "canvas",
    lining: "lining",
    interlining: "interlining",
    blackout: "blackout",
  }),
  colour: {
    ...text("Colour", 7, "for the picture, as #d9c7a3"),
    wanted: "# and six digits or letters from a to f, as #d9c7a3",
  },
  bendingLengthMm: fine("Bending length", 3, 200, "half the overhang that droops by 41.5°"),
  shrinkLength: percent("Shrinks along the length", "not yet preshrunk"),
  shrinkWidth: percent("Shrinks across the width", "not yet preshrunk"),
  bowShare: percent("Bow", "depth of a weft thread’s arc, of the width"),
  skewShare: percent("Skew", "slant of a weft thread from edge to edge, of the width"),
  direction: choice("Pattern has a top", { none: "no, either way up", "one-way": "yes, one way up" }),
  nap: { kind: "flag", label: "Pile or shine", yes: "lies one way, as velvet", no: "none" },
  pricePerM: perRun("Price", 1e7, "¤"),
  soldByMm: size("Sold by", "smallest step off the bolt"),
  ...ORIGIN,
  note: NOTE,
});

export const REPEAT_FIELDS: Fields<Repeat> = withLimits(repeatSchema, {
  verticalMm: size("Repeat along the length"),
  horizontalMm: size("Repeat across the width"),
  match: choice("Neighbouring widths match", {
    straight: "straight across",
    "half-drop": "half a repeat lower",
  }),
  startXMm: length("First whole repeat", "from the left usable edge"),
});

export const LOCK_FIELDS: FieldsOf<"locks"> = withLimits(cordLockSchema, {
  name: NAME,
  dividerWires: count("Divider wires", 0, 12, "or say the slots: one more"),
  slots: count("Slots", 1, 13, "in place of the wires"),
  cordsMax: count("Cords at most", 1, 40, "as its maker states; else left empty"),
  cordMinMm: fine("Thinnest cord", 0.3, 6),
  cordMaxMm: fine("Thickest cord", 0.3, 6),
  cordNominalMm: fine("Cord it is made for", 0.3, 6, "where no range is stated"),
  thinCordMm: fine("Thin cord", 0.3, 6, "this or thinner: inner slots only"),
  thinCordsMax: count("Thin cords at most", 1, 40),
  endGapMm: fine("Gap at the roller’s end", 0, 6, "by feeler"),
  rollerDiameterMm: fine("Roller diameter", 2, 40),
  housingLengthMm: fine("Housing along the board"),
  housingWidthMm: fine("Housing across the board"),
  housingHeightMm: fine("Housing height"),
  screws: count("Screws", 1, 6),
  massG: number("Weight", 0, 2000, "g"),
  price: PRICE,
  ...ORIGIN,
  note: NOTE,
});

export const CORD_FIELDS: FieldsOf<"cords"> = withLimits(cordSchema, {
  name: NAME,
  diameterMm: fine("Diameter", 0.3, 6),
  massGPerM: number("Weight of a metre", 0, 100, "g"),
  breakingN: number("Breaking strength", 1, 20_000, "N", "as stated by its maker"),
  stretchAt10N: percent("Stretch under 10 N", "1 kg hung on it"),
  pricePerM: perRun("Price", 1e7, "¤"),
  spoolMm: run("On one spool", 100, 5_000_000),
  price: { ...PRICE, label: "Price of a spool" },
  ...ORIGIN,
  note: NOTE,
});

export const BAR_FIELDS: FieldsOf<"bars"> = withLimits(barSchema, {
  name: NAME,
  material: choice("Material", {
    steel: "steel",
    aluminium: "aluminium",
    wood: "wood",
    plastic: "plastic",
  }),
  widthMm: fine("Face"),
  thicknessMm: fine("Thickness"),
  round: { kind: "flag", label: "Section", yes: "round", no: "flat" },
  massGPerM: number("Weight of a metre", 1, 20_000, "g", "weighed; else from section and material"),
  stockMm: run("Sold in lengths of", 0.01, 20_000),
  price: PRICE,
  ...ORIGIN,
  note: NOTE,
});

export const BOARD_FIELDS: FieldsOf<"boards"> = withLimits(boardSchema, {
  name: NAME,
  depthMm: size("Depth", "from the wall or glass into the room"),
  thicknessMm: size("Thickness"),
  densityKgM3: number("Density", 100, 1500, "kg/m³"),
  stockMm: run("Sold in lengths of", 0.01, 20_000),
  price: PRICE,
  ...ORIGIN,
  note: NOTE,
});

export const RING_FIELDS: FieldsOf<"rings"> = withLimits(ringSchema, {
  name: NAME,
  diameterMm: fine("Diameter"),
  massG: number("Weight of one", 0, 100, "g"),
  packOf: count("In a pack", 1, 10_000),
  price: { ...PRICE, label: "Price of a pack" },
  ...ORIGIN,
  note: NOTE,
});

export const EYE_FIELDS: FieldsOf<"eyes"> = withLimits(eyeSchema, {
  name: NAME,
  outsideDiameterMm: fine("Outside diameter"),
  friction: number("Friction of cord on it", 0, 1, "", "coefficient"),
  pulleyShare: number("A pulley: share of the pull it passes on", 0.5, 1, "", "at a quarter turn"),
  packOf: count("In a pack", 1, 10_000),
  price: { ...PRICE, label: "Price of a pack" },
  ...ORIGIN,
  note: NOTE,
});

export const TUBE_FIELDS: FieldsOf<"tubes"> = withLimits(tubeSchema, {
  name: NAME,
  diameterMm: fine("Outside diameter", 0.1, 500),
  wallMm: fine("Wall", 0.1, 50),
  metal: choice("Metal", { aluminium: "aluminium", steel: "steel" }),
  massGPerM: number("Weight of a metre", 1, 20_000, "g"),
  stockMm: run("Sold in lengths of", 0.01, 20_000),
  spoolCoreMm: fine("Spool: cord winds on", 0.1, 500, "diameter; the tube’s own where none is given"),
  spoolFlangeMm: fine("Spool: flanges", 0.1, 500, "outside diameter"),
  spoolLengthMm: fine("Spool: length along the tube", 0.1, 500),
  spoolWindMm: fine("Spool: clear width", 0.1, 500, "between the flanges"),
  spoolPrice: money("Price of a spool"),
  price: { ...PRICE, label: "Price of a length" },
  ...ORIGIN,
  note: NOTE,
});

export const DRIVE_FIELDS: FieldsOf<"drives"> = withLimits(driveSchema, {
  name: NAME,
  kind: choice("Driven by", { spring: "a spring", wand: "a wand", loop: "a loop", motor: "a motor" }),
  lengthMm: fine("Length along the board", 0.1, 500),
  heightMm: fine("Height", 0.1, 500),
  depthMm: fine("Depth", 0.1, 500, "from the wall into the room"),
  massMaxKg: number("Heaviest shade", 0.1, 500, "kg", "as stated by its maker"),
  massMinKg: number("Lightest shade", 0, 500, "kg", "spring; as stated by its maker"),
  ratio: number("Turns for one of the tube", 0.1, 200, "", "of wheel or wand"),
  wheelMm: fine("Wheel that the loop runs on", 0.1, 500, "diameter"),
  crankMm: fine("Crank of the wand", 0.1, 500, "radius"),
  detachable: { kind: "flag", label: "Wand", yes: "taken off after use", no: "stays on" },
  efficiency: number("Share of the work passed on", 0.05, 1),
  torqueNm: number("Rated torque", 0.01, 1000, "N·m", "motor"),
  turnsPerMin: number("Turns a minute", 0.1, 1000, "", "motor"),
  power: choice("Power", { mains: "mains", "low-voltage": "battery or low voltage" }),
  screws: count("Screws", 1, 6),
  massG: number("Weight", 0, 20_000, "g"),
  price: PRICE,
  ...ORIGIN,
  note: NOTE,
});

export const RATE_FIELDS: { [K in Exclude<keyof Rates, "prices">]-?: FieldSpec } = withLimits(ratesSchema, {
  currency: {
    ...text("Currency", 3, "three letters of ISO 4217"),
    required: true,
    wanted: "three capital letters of ISO 4217, such as USD",
  },
  labourPerHour: money("An hour of work"),
  measureMin: number("Measuring a window", 0, 10_000, "min"),
  cutMinPerWidth: number("Cutting one width", 0, 10_000, "min"),
  sewMinPerM: perRun("Hemming and joining", 10_000, "min"),
  ringMin: number("Sewing one ring", 0, 10_000, "min"),
  rigMinPerCord: number("Threading and levelling one cord", 0, 10_000, "min"),
  boardMin: number("Making and covering a board", 0, 10_000, "min"),
  hangMin: number("Hanging one shade", 0, 10_000, "min"),
  wasteShare: percent("Extra on plain cloth"),
  taxShare: percent("Tax"),
});

const lines = (label: string, hint?: string): TextSpec => ({ ...text(label, 2000, hint), lines: true });

export const OFFER_FIELDS: { [K in keyof Required<OfferTerms>]: FieldSpec } = withLimits(offerSchema, {
  maker: lines("Maker", "name and address, as they are printed"),
  clientAddress: lines("Address of the client"),
  number: text("Number", 120, "of quote, order and invoice"),
  markUpShare: percent("Mark-up", "on materials and work; never printed"),
  depositShare: percent("Deposit", "with the order"),
  validDays: count("A quote stands for", 1, 365, "days"),
  payDays: count("An invoice is paid within", 0, 365, "days"),
  terms: lines("Terms", "as they are printed"),
});

export const CUTTING_FIELDS: { [K in keyof Required<Cutting>]: FieldSpec } = withLimits(cuttingSchema, {
  way: choice("Cloth is cut", {
    straight: "from edge to edge, along a straight edge",
    free: "around the pieces",
  }),
  stages: count("Straight cuts turn", 2, 6, "across, along and across again is 3"),
  tableMm: size("Length of the table", "no cut along the cloth is longer, and no more is cut off at a time"),
  spread: choice("Cloth lies", {
    single: "single",
    doubled: "doubled: equal lengths of plain cloth on each other",
  }),
  hand: choice("The cutter is", { right: "right-handed", left: "left-handed" }),
  toleranceMm: fine("Cuts keep to their line within", 0.1, 20),
  gapMm: length("Cloth left between two cuts"),
  keepClothWidthMm: size("Remnants to keep", "at least so wide"),
  keepClothLengthMm: size("Remnants to keep, length", "at least so long"),
  keepLengthMm: size("Offcuts to keep", "of bars, ribs, boards and tubes"),
  sawKerfMm: fine("Saw line", 0, 20),
  seed: count("Seed", 0, 2 ** 31 - 1, "another seed tries other plans"),
});

/** Another length in which a bar, rib or board is sold. */
export const SOLD_FIELDS = withLimits(soldLengthSchema, {
  lengthMm: run("Also sold in lengths of", 0.01, 20_000),
  price: money("Price of such a length"),
});
