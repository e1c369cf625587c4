import { type PatchOperation, setPatch } from "../../figures/index.ts";
import {
  type Job,
  partIdOf,
  partsOf,
  partsOfPiece,
  type Stock,
  type StockPiece,
  withPartsFrom,
} from "../../job/index.ts";
import { clothLengthText, lengthText, type UnitChoice } from "../../units/index.ts";

export type StockKind = keyof Stock;

export type PartsHeld = Pick<Job, "cloths" | "hardware">;

export function piecesOf(stock: Stock, kind: StockKind): readonly StockPiece[] {
  return stock[kind] ?? [];
}

/** Its own name, and what it is of, an example part too. */
export function pieceName(piece: StockPiece, shop: PartsHeld): string {
  const { cloths, cords, bars, ribs, boards } = partsOf(shop);
  const id = partIdOf(piece);
  const of = [...cloths, ...cords, ...bars, ...ribs, ...boards].find((part) => part.id === id)?.name ?? id;
  return "name" in piece && piece.name !== undefined ? `${piece.name} (${of})` : of;
}

/** Its length, of cloth as cloth is sold, with the width of a remnant and the dye lot. */
export function pieceSizeText(piece: StockPiece, units: UnitChoice): string {
  if (!("cloth" in piece)) return lengthText(piece.lengthMm, units);
  const across = piece.widthMm === undefined ? "" : `, ${lengthText(piece.widthMm, units)} wide`;
  const lot = piece.lot === undefined ? "" : `, lot ${piece.lot}`;
  return `${clothLengthText(piece.lengthMm, units, "down")}${across}${lot}`;
}

/** The piece, and the cloth or part that it is of where the job has none such yet. */
export function takePatch(job: Job, shop: PartsHeld, kind: StockKind, piece: StockPiece): PatchOperation[] {
  const { cloths, hardware } = withPartsFrom(job, partsOfPiece(shop, piece));
  return [
    ...setPatch(job, "/cloths", cloths),
    ...setPatch(job, "/hardware", hardware),
    ...setPatch(job, `/stock/${kind}`, [...piecesOf(job.stock, kind), piece]),
  ];
}
