import { type PatchOperation, setPatch } from "../../figures/index.ts";
import {
  type Job,
  type OwnParts,
  ownPartsOf,
  PART_KINDS,
  partIdOf,
  partsOf,
  type Stock,
  type StockPiece,
  withPartsFrom,
} from "../../job/index.ts";

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

/** The cloth or part that a piece is of, among those that are held. */
export function partsOfPiece(held: PartsHeld, piece: StockPiece): OwnParts {
  const id = partIdOf(piece);
  return Object.fromEntries(
    PART_KINDS.map((kind) => [kind, ownPartsOf(held, kind).filter((part) => part.id === id)]),
  );
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
