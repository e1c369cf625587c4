import * as z from "zod";
import { RULERS, UNIT_SYSTEMS } from "../units/index.ts";
import { withArticle } from "../words/index.ts";
import { besideSchema, headSchema } from "./beyond-rectangle.ts";
import { clothSchema } from "./cloth.ts";
import { cutClothSchema, laidPiecesSchema } from "./cut-work.ts";
import { cuttingSchema } from "./cutting.ts";
import { existingSchema } from "./existing.ts";
import { footholdSchema } from "./footholds.ts";
import { hardwareSchema } from "./hardware.ts";
import { inLineSchema } from "./in-line.ts";
import { makingSchema } from "./making.ts";
import {
  id,
  lengthMm,
  MOST_PARTS,
  minutes,
  moneySchema,
  nameSchema,
  noteSchema,
  share,
  spanMm,
} from "./primitives.ts";
import { stockSchema } from "./stock.ts";

export const JOB_FORMAT = "shadewright-job";
/** Version of the job document that this program writes. */
export const JOB_VERSION = 1;

// biome-ignore format: one line, as places are read
export const PLACES = ["us", "ca", "eu", "gb", "ni", "ie", "eea", "au", "nz", "jp", "kr", "elsewhere"] as const;
export type Place = (typeof PLACES)[number];
export const PLACE_NAMES: Record<Place, string> = {
  us: "United States",
  ca: "Canada",
  eu: "European Union",
  gb: "Great Britain",
  ni: "Northern Ireland",
  ie: "Ireland",
  eea: "Iceland, Liechtenstein, Norway or Switzerland",
  au: "Australia",
  nz: "New Zealand",
  jp: "Japan",
  kr: "Korea",
  elsewhere: "Elsewhere",
};

export const PURPOSES = ["own-home", "gift", "for-sale", "public-building"] as const;
export type Purpose = (typeof PURPOSES)[number];
export const PURPOSE_NAMES: Record<Purpose, string> = {
  "own-home": "For my own home",
  gift: "A gift",
  "for-sale": "For sale",
  "public-building": "For a public building",
};

/** Made for one window, or to sizes that wait for a buyer: some places rule on the two differently. */
export const GOODS = ["custom", "stock"] as const;
export type Goods = (typeof GOODS)[number];
export const GOODS_NAMES: Record<Goods, string> = {
  custom: "Made to order",
  stock: "Made for stock",
};

/** Styles of soft shade, the plainest first. Their names differ from country to country; `docs/method.md` says what we mean. */
export const STYLES = [
  "flat",
  "ribbed",
  "hobbled",
  "tucked",
  "relaxed",
  "tailed",
  "pleated-balloon",
  "gathered-balloon",
  "austrian",
  "festoon",
] as const;
export type StyleKind = (typeof STYLES)[number];
/** As they stand in a sentence: “a … shade”. */
export const STYLE_NAMES: Record<StyleKind, string> = {
  flat: "flat",
  ribbed: "ribbed",
  hobbled: "hobbled",
  tucked: "stitched-tuck",
  relaxed: "relaxed",
  tailed: "tailed",
  "pleated-balloon": "pleated balloon",
  "gathered-balloon": "gathered balloon",
  austrian: "Austrian",
  festoon: "gathered festoon",
};

/** `a flat`, `an Austrian`. */
export function styleWithArticle(style: StyleKind): string {
  return withArticle(STYLE_NAMES[style]);
}

export const unitsSchema = z.strictObject({
  system: z.enum(UNIT_SYSTEMS),
  ruler: z.enum(RULERS).meta({ description: "Finest mark that figures are rounded to" }),
});

export const obstructionSchema = z.strictObject({
  kind: z.enum(["handle", "crank", "sill", "tiles", "other"]),
  projectionMm: lengthMm.meta({ description: "How far it stands out from the glass or wall, mm" }),
  note: noteSchema.optional(),
});

/** What was measured at the window. One width and one height are enough to begin. */
export const openingSchema = z.strictObject({
  widthsMm: z.array(spanMm).min(1).max(3).meta({ description: "Width at top, middle and bottom, mm" }),
  heightsMm: z.array(spanMm).min(1).max(3).meta({ description: "Height at left, centre and right, mm" }),
  diagonalsMm: z.tuple([spanMm, spanMm]).optional().meta({ description: "Both diagonals, mm" }),
  recessDepthMm: lengthMm.optional().meta({ description: "Free depth of the recess, mm" }),
  sillAboveFloorMm: lengthMm.optional().meta({ description: "Bottom of the opening above the floor, mm" }),
  footholds: z.array(footholdSchema).max(12).optional().meta({
    description: "What a child can stand on at the window; an empty list where there is nothing",
  }),
  footholdMm: lengthMm.optional().meta({
    description: "Of before: the highest of the footholds, mm, read where their list is missing",
  }),
  obstructions: z.array(obstructionSchema).max(20).optional(),
  left: besideSchema.optional().meta({ description: "What stands at its left, seen from the room" }),
  right: besideSchema.optional().meta({ description: "What stands at its right, seen from the room" }),
  head: headSchema.optional().meta({ description: "A head that is not level; a level one where absent" }),
});

export const MOUNTS = ["inside", "outside", "to-size"] as const;
export const shadeSchema = z.strictObject({
  style: z.enum(STYLES).default("flat"),
  mount: z.enum(MOUNTS).default("inside").meta({
    description: "Inside or outside the opening; to-size takes width and height as the finished size",
  }),
  face: id.optional().meta({ description: "Cloth of the face, by id" }),
  lining: id.nullable().optional().meta({ description: "Cloth of the lining; null for unlined" }),
  interlining: id.nullable().optional(),
  blackout: id.nullable().optional(),
  banding: id.nullable().optional().meta({ description: "Cloth of the contrast banding, by id" }),
  bottomBand: id.nullable().optional().meta({ description: "Cloth of the band along the bottom, by id" }),
  making: makingSchema.optional(),
  existing: existingSchema.optional(),
  note: noteSchema.optional(),
});

export const windowSchema = z.strictObject({
  id,
  name: nameSchema,
  opening: openingSchema,
  shade: shadeSchema.prefault({}),
  ticks: z.array(id).max(500).optional().meta({ description: "Steps already done, by id" }),
});

export const roomSchema = z.strictObject({
  id,
  name: nameSchema,
  note: noteSchema.optional(),
  windows: z.array(windowSchema).max(5000),
  inLine: inLineSchema
    .optional()
    .meta({ description: "Windows of the room share levels and spacing of their folds" }),
});

/** Names of lines hold the id of a part or cloth and what it is. */
const lineIdSchema = z
  .string()
  .regex(/^[A-Za-z0-9][A-Za-z0-9_-]{0,119}$/, "letters, digits, - and _ only, up to 120 of them");

export const ratesSchema = z
  .strictObject({
    currency: z.string().regex(/^[A-Z]{3}$/, "three capital letters of ISO 4217, such as USD"),
    labourPerHour: moneySchema,
    measureMin: minutes.meta({ description: "Measuring one window, minutes" }),
    cutMinPerWidth: minutes.meta({ description: "Cutting one width, minutes" }),
    sewMinPerM: minutes.meta({ description: "Hemming and joining, minutes a metre" }),
    ringMin: minutes.meta({ description: "Sewing one ring, minutes" }),
    rigMinPerCord: minutes.meta({ description: "Threading and levelling one cord, minutes" }),
    boardMin: minutes.meta({ description: "Making and covering one board, minutes" }),
    hangMin: minutes.meta({ description: "Hanging one shade, minutes" }),
    wasteShare: share.meta({ description: "Extra on plain cloth for mistakes, share of one" }),
    taxShare: share,
    prices: z.record(lineIdSchema, moneySchema).meta({
      description:
        "Prices typed in the shopping list, by its line: of one metre, one length as it is sold, one pack or one piece",
    }),
  })
  .partial();

/** What stands on a quote beside its figures. */
export const offerSchema = z
  .strictObject({
    maker: noteSchema.meta({ description: "Who makes it: name, address, what a client needs, line by line" }),
    clientAddress: noteSchema.meta({ description: "Address of the client, line by line" }),
    number: nameSchema.meta({ description: "Number of quote, order and invoice, as the maker counts" }),
    markUpShare: z.number().min(0).max(5).meta({ description: "Put on materials and work, share of one" }),
    depositShare: z.number().min(0).max(1).meta({ description: "Paid with the order, share of the price" }),
    validDays: z.int().min(1).max(365).meta({ description: "Days that a quote stands" }),
    payDays: z.int().min(0).max(365).meta({ description: "Days in which an invoice is to be paid" }),
    terms: noteSchema.meta({ description: "The maker’s own terms, as they are printed" }),
  })
  .partial();

export const jobSchema = z
  .strictObject({
    format: z.literal(JOB_FORMAT),
    version: z.literal(JOB_VERSION),
    id,
    name: nameSchema,
    client: nameSchema.optional(),
    note: noteSchema.optional(),
    demo: z.boolean().optional().meta({ description: "Invented for demonstration" }),
    place: z
      .enum(PLACES)
      .optional()
      .meta({ description: "Where the shades will hang; decides which child-safety rules are read" }),
    purpose: z.enum(PURPOSES).optional(),
    goods: z.enum(GOODS).optional().meta({
      description:
        "Made to order for one window, or for stock; the United States rule on the two differently",
    }),
    units: unitsSchema.default({ system: "imperial", ruler: "1/8 in" }),
    rooms: z.array(roomSchema).max(500),
    cloths: z.array(clothSchema).max(MOST_PARTS).default([]),
    hardware: hardwareSchema.default({}),
    stock: stockSchema.default({}),
    workshop: makingSchema
      .optional()
      .meta({ description: "The workshop's habits, for all shades of the job" }),
    rates: ratesSchema.default({}),
    offer: offerSchema.optional().meta({ description: "What a client reads on quote, order and invoice" }),
    cutting: cuttingSchema.optional(),
    laidPieces: laidPiecesSchema.optional(),
    cutCloth: cutClothSchema.optional(),
    leftOver: stockSchema.optional().meta({
      description:
        "What was left when all was cut, laid into the shop for other jobs; of the shop's own pieces by their ids",
    }),
  })
  .meta({ title: "Shadewright job", description: "Windows, shades, cloths, hardware and rates of one job" });

export type Job = z.output<typeof jobSchema>;
export type JobInput = z.input<typeof jobSchema>;
export type Room = Job["rooms"][number];
export type Window = Room["windows"][number];
export type Shade = Window["shade"];
export type Opening = Window["opening"];
export type Rates = Job["rates"];
export type OfferTerms = z.infer<typeof offerSchema>;
export type Mount = Shade["mount"];
