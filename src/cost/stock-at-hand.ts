import type { Stock } from "../job/index.ts";
import { SAME_LENGTH_MM } from "../units/index.ts";
import { cutFromStock, type Filled } from "./cut-from-stock.ts";

interface StockPiece {
  lengthMm: number;
  /** Unknown: as wide as the cloth itself. */
  widthMm?: number;
}

/** What lies at hand, and is used up as needs are met. */
export class StockAtHand {
  readonly #pieces = new Map<string, StockPiece[]>();

  constructor(stock: Stock = {}) {
    for (const { cloth, lengthMm, widthMm } of stock.cloth ?? []) this.#put(cloth, { lengthMm, widthMm });
    for (const { part, lengthMm } of stock.lengths ?? []) this.#put(part, { lengthMm });
  }

  #put(id: string, piece: StockPiece): void {
    const pieces = this.#pieces.get(id);
    if (pieces === undefined) this.#pieces.set(id, [piece]);
    else pieces.push(piece);
  }

  /** How many pieces of it lie at hand and their length together, mm. */
  holds(id: string): { pieces: number; lengthMm: number } {
    const pieces = this.#pieces.get(id) ?? [];
    let lengthMm = 0;
    for (const piece of pieces) lengthMm += piece.lengthMm;
    return { pieces: pieces.length, lengthMm };
  }

  /** Cuts from what is at hand and then from new lengths, and remembers what is left. */
  fill(
    id: string,
    cutsMm: readonly number[],
    newMm: number | undefined,
    kerfMm: number,
    widthMm = 0,
  ): Filled {
    const wide = (this.#pieces.get(id) ?? []).filter(
      (piece) => piece.widthMm === undefined || piece.widthMm + SAME_LENGTH_MM >= widthMm,
    );
    const filled = cutFromStock({ cutsMm, inStockMm: wide.map((piece) => piece.lengthMm), newMm, kerfMm });
    wide.forEach((piece, index) => {
      piece.lengthMm = filled.stockLeftMm[index] ?? piece.lengthMm;
    });
    return filled;
  }
}
