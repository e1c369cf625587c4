import { type Stock, stockPieces } from "../../job/index.ts";

/** The stock with an id of its own for each piece: where a job gives one twice, the later ones are numbered. */
export function withOwnIds(stock: Stock): Stock {
  const { cloth, lengths } = stock;
  return {
    ...stock,
    ...(cloth ? { cloth: numbered(cloth) } : {}),
    ...(lengths ? { lengths: numbered(lengths) } : {}),
  };
}

function numbered<T extends { id: string }>(pieces: readonly T[]): T[] {
  const given = new Set(pieces.map(({ id }) => id));
  const taken = new Set<string>();
  return pieces.map((piece) => {
    let { id } = piece;
    for (let n = 2; taken.has(id) || (id !== piece.id && given.has(id)); n++) id = `${piece.id}-${n}`;
    taken.add(id);
    return id === piece.id ? piece : { ...piece, id };
  });
}

/** Room for a number behind them, within what a job may hold. */
const MOST_ID = 50;
const MOST_NAME = 110;

/** Ids and names that nothing in stock has yet: the wish, or the first of it with a number. */
export function freshNames(stock: Stock): Record<"freshId" | "freshName", (wish: string) => string> {
  const names = new Set((stock.cloth ?? []).flatMap(({ name }) => name ?? []));
  const ids = new Set(stockPieces(stock).map(({ id }) => id));
  return {
    freshId: (wish) => fresh(ids, wish.slice(0, MOST_ID), "-"),
    freshName: (wish) => fresh(names, wish.slice(0, MOST_NAME), " "),
  };
}

/** Takes it. */
function fresh(taken: Set<string>, wish: string, joint: string): string {
  let found = wish;
  for (let n = 2; taken.has(found); n++) found = `${wish}${joint}${n}`;
  taken.add(found);
  return found;
}
