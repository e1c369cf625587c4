/** Where a piece stands: sheet and column, and how far its foot lies over the foot of the column. */
export interface PiecePlace<Piece> {
  piece: Piece;
  sheet: number;
  column: number;
  up: number;
}

interface Column<Piece> {
  pieces: { piece: Piece; up: number }[];
  taken: number;
}

/**
 * Pieces one over another in as few columns as the longest-first rule finds, and columns side by side on as few sheets as
 * those need. Pieces of one column stand in the order in which they came.
 *
 * @param height of each piece; none is higher than `columnHeight`
 * @param between two pieces of one column
 */
export function packPieces<Piece>(
  pieces: readonly Piece[],
  height: (piece: Piece) => number,
  { columnHeight, columns, between }: { columnHeight: number; columns: number; between: number },
): PiecePlace<Piece>[] {
  const order = new Map(pieces.map((piece, i) => [piece, i]));
  const orderOf = (piece: Piece) => order.get(piece) ?? 0;
  const filled: Column<Piece>[] = [];
  for (const piece of [...pieces].sort((a, b) => height(b) - height(a) || orderOf(a) - orderOf(b))) {
    // A hair of rounding is no reason for another sheet.
    const fits = ({ taken }: Column<Piece>) => taken + between + height(piece) <= columnHeight + 1e-6;
    const column = filled.find(fits);
    if (column === undefined) filled.push({ pieces: [{ piece, up: 0 }], taken: height(piece) });
    else {
      column.pieces.push({ piece, up: column.taken + between });
      column.taken += between + height(piece);
    }
  }
  const first = ({ pieces: [one] }: Column<Piece>) => (one === undefined ? 0 : orderOf(one.piece));
  return [...filled]
    .sort((a, b) => first(a) - first(b))
    .flatMap((column, i) =>
      column.pieces.map(({ piece, up }) => ({
        ...{ piece, up },
        sheet: Math.floor(i / columns),
        column: i % columns,
      })),
    );
}
