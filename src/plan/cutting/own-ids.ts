import type { Stock } from "../../job/index.ts";

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
