import * as z from "zod";
import { clothPhotoSchema } from "./cloth-photo.ts";
import { knownFields, partOrigin } from "./part-origin.ts";
import {
  bendingMm,
  clothWidthMm,
  id,
  lengthMm,
  moneySchema,
  nameSchema,
  noteSchema,
  share,
  sizeMm,
} from "./primitives.ts";

export const MATCHES = ["straight", "half-drop"] as const;

/** Whether a cloth may hang upside down: `one-way` has a top. */
export const DIRECTIONS = ["none", "one-way"] as const;

/** What a cloth is, where it tells how stiff it may be. */
export const CLOTH_KINDS = [
  "sheer",
  "cotton",
  "linen",
  "velvet",
  "canvas",
  "lining",
  "interlining",
  "blackout",
] as const;
export type ClothKind = (typeof CLOTH_KINDS)[number];

/** How the pattern of a cloth repeats; a plain cloth has none. */
export const repeatSchema = z
  .strictObject({
    verticalMm: sizeMm.meta({ description: "Height of one repeat along the length, mm" }),
    horizontalMm: sizeMm.optional().meta({ description: "Width of one repeat, mm" }),
    match: z.enum(MATCHES).default("straight").meta({ description: "How neighbouring widths match" }),
    startXMm: lengthMm.optional().meta({
      description:
        "From the left usable edge to the left edge of a whole repeat, mm; left out: whole repeats lie centred in the width",
    }),
  })
  .meta({ description: "Pattern repeat" });

const clothShape = {
  id,
  name: nameSchema,
  ...partOrigin,
  usableWidthMm: clothWidthMm
    .optional()
    .meta({ description: "Width that can be used, selvedges taken off, mm" }),
  massGsm: z.number().min(1).max(3000).optional().meta({ description: "Mass per area, g/m²" }),
  thicknessMm: z.number().min(0.01).max(50).optional().meta({ description: "Thickness, mm" }),
  kind: z.enum(CLOTH_KINDS).optional().meta({
    description: "What it is: tells how stiff it may be, where that was not measured",
  }),
  colour: z
    .string()
    .regex(/^#[0-9a-f]{6}$/i, "# and six digits or letters from a to f, as #d9c7a3")
    .optional()
    .meta({
      description: "Colour in full light for pictures, sRGB as #rrggbb; left out: that of its kind",
    }),
  bendingLengthMm: bendingMm.optional().meta({
    description:
      "Bending length, mm: half the overhang at which a strip slid over an edge has drooped by 41.5°",
  }),
  repeat: repeatSchema.optional(),
  shrinkLength: share
    .optional()
    .meta({ description: "Shrinkage along the length still to come, share of one" }),
  shrinkWidth: share
    .optional()
    .meta({ description: "Shrinkage across the width still to come, share of one" }),
  bowShare: share.optional().meta({
    description: "Bow: depth of the arc of a weft thread, or of a printed line, as a share of the width",
  }),
  skewShare: share.optional().meta({
    description:
      "Skew: how far a weft thread, or a printed line, slants from edge to edge, as a share of the width",
  }),
  direction: z
    .enum(DIRECTIONS)
    .optional()
    .meta({ description: "one-way: the pattern has a top, so every piece hangs the same way up" }),
  nap: z.boolean().optional().meta({ description: "It has a pile or a shine that lies one way, as velvet" }),
  pricePerM: moneySchema
    .optional()
    .meta({ description: "Price of one metre off the bolt, in the job's currency" }),
  soldByMm: sizeMm.optional().meta({ description: "Step in which it is sold, mm" }),
  photo: clothPhotoSchema.optional().meta({ description: "A picture of it, with one repeat marked" }),
  note: noteSchema.optional(),
  demo: z.boolean().optional().meta({ description: "Invented for demonstration" }),
};

/** One cloth as it lies on the bolt. */
export const clothSchema = z
  .strictObject({ ...clothShape, known: knownFields(clothShape) })
  .meta({ description: "A cloth on the bolt" });

export type Repeat = z.output<typeof repeatSchema>;
