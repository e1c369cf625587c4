import * as z from "zod";
import { id, lengthMm, moneySchema, nameSchema, noteSchema, sizeMm } from "./primitives.ts";

/** Longest bolt, mm. */
export const LONGEST_BOLT_MM = 1_000_000;
/** Shorter than this nothing is kept in stock, mm. */
export const LEAST_PIECE_MM = 1;

/** A place on a bolt that no piece may touch. */
export const flawSchema = z
  .strictObject({
    fromMm: z
      .number()
      .min(0)
      .max(LONGEST_BOLT_MM)
      .meta({ description: "From the end that is cut first, mm" }),
    lengthMm: sizeMm.meta({ description: "Along the bolt, mm" }),
    xMm: lengthMm
      .optional()
      .meta({ description: "From the left selvedge, mm; left out: over the whole width" }),
    widthMm: sizeMm
      .optional()
      .meta({ description: "Across the bolt, mm; left out: as far as the right selvedge" }),
    note: noteSchema.optional(),
  })
  .meta({ description: "A flaw to avoid" });

/** What is in stock: cloth in bolts and remnants, cord, battens and boards by the length. */
export const stockSchema = z
  .strictObject({
    cloth: z
      .array(
        z.strictObject({
          id,
          name: nameSchema.optional(),
          cloth: id,
          widthMm: sizeMm.optional(),
          lengthMm: z.number().min(LEAST_PIECE_MM).max(LONGEST_BOLT_MM),
          lot: nameSchema.optional().meta({
            description: "Dye lot; pieces of one shade that are seen come from one lot",
          }),
          pricePerM: moneySchema.optional().meta({
            description: "What a metre of it is priced at; left out: it costs nothing more",
          }),
          flaws: z.array(flawSchema).max(200).optional(),
          repeatStartMm: lengthMm.optional().meta({
            description: "Patterned cloth: from the end that is cut first to where a repeat begins, mm",
          }),
          columnStartMm: lengthMm.optional().meta({
            description:
              "Patterned cloth: from the left edge to where a repeat begins across, mm; left out: as on a bolt of full width",
          }),
        }),
      )
      .max(2000),
    lengths: z
      .array(z.strictObject({ id, part: id, lengthMm: z.number().min(LEAST_PIECE_MM).max(5_000_000) }))
      .max(2000),
  })
  .partial()
  .meta({ description: "Bolts, remnants, cord and lengths at hand" });

export type Flaw = z.output<typeof flawSchema>;
export type Stock = z.output<typeof stockSchema>;
/** A bolt or remnant, or a length of cord, board, rod or rib. */
export type StockPiece = NonNullable<Stock["cloth"]>[number] | NonNullable<Stock["lengths"]>[number];

/** Everything in stock. */
export function stockPieces({ cloth = [], lengths = [] }: Stock): StockPiece[] {
  return [...cloth, ...lengths];
}

/**
 * What a job holds on to of its stock. Once all is cut, lengths stay listed as they were cut, but what is left of them is
 * the shop's.
 */
export function heldStock({ stock, leftOver }: { stock: Stock; leftOver?: Stock | undefined }): Stock {
  return leftOver?.lengths === undefined ? stock : { ...stock, lengths: [] };
}

/** Id of the cloth or part that a piece is of. */
export function partIdOf(piece: StockPiece): string {
  return "cloth" in piece ? piece.cloth : piece.part;
}
