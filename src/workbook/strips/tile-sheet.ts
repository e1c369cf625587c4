/** One page's part of a drawing at full size: columns from the left, rows from the top, mm of paper. */
export interface SheetTile {
  /** `A1`: row by letter, column by number. */
  key: string;
  column: number;
  row: number;
  /** What is this page's own; beyond it the neighbours' edge is printed again. */
  fromXMm: number;
  toXMm: number;
  fromYMm: number;
  toYMm: number;
}

export interface SheetTiles {
  columns: number;
  rows: number;
  /** Those on which something is drawn, row by row. */
  tiles: SheetTile[];
}

/** More pages than this nobody glues together. */
export const MOST_TILES = 60;

/**
 * Cuts a drawing of this size into pages that print so much each, `overlapMm` of the neighbour at every join. Pages on
 * which nothing is drawn are left out; `isDrawn` says where something is.
 */
export function tileSheet(
  drawing: { widthMm: number; heightMm: number },
  page: { widthMm: number; heightMm: number },
  overlapMm: number,
  isDrawn: (tile: Omit<SheetTile, "key">) => boolean,
): SheetTiles {
  const columns = count(drawing.widthMm, page.widthMm, overlapMm);
  const rows = count(drawing.heightMm, page.heightMm, overlapMm);
  const stepX = page.widthMm - overlapMm;
  const stepY = page.heightMm - overlapMm;
  const tiles: SheetTile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const tile = {
        column,
        row,
        fromXMm: column * stepX,
        toXMm: Math.min(drawing.widthMm, column * stepX + page.widthMm),
        fromYMm: row * stepY,
        toYMm: Math.min(drawing.heightMm, row * stepY + page.heightMm),
      };
      if (isDrawn(tile)) tiles.push({ key: `${String.fromCharCode(65 + row)}${column + 1}`, ...tile });
    }
  }
  return { columns, rows, tiles };
}

function count(lengthMm: number, pageMm: number, overlapMm: number): number {
  if (!(pageMm > overlapMm)) throw new Error(`invalid page: ${pageMm} mm with an overlap of ${overlapMm} mm`);
  return Math.max(1, Math.ceil((lengthMm - overlapMm) / (pageMm - overlapMm) - 1e-9));
}
