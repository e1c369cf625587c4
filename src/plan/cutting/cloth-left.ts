import type { Rect } from "../../cutting/index.ts";
import type { Stock } from "../../job/index.ts";
import type { ClothCutting } from "./cutting-plan.ts";

export type ClothInStock = NonNullable<Stock["cloth"]>[number];

/** What stays of a bolt when so much is cut off: its flaws, and the pattern, come nearer to the end. */
export function restOf(piece: ClothInStock, offMm: number, cloth: ClothCutting): ClothInStock {
  const { flaws, ...rest } = piece;
  const left = flawsWithin(flaws ?? [], {
    xMm: 0,
    yMm: offMm,
    widthMm: Number.POSITIVE_INFINITY,
    lengthMm: piece.lengthMm - offMm,
  });
  return {
    ...rest,
    lengthMm: tenth(piece.lengthMm - offMm),
    ...repeatOf(cloth, piece.id, { xMm: 0, yMm: offMm }),
    ...(left.length > 0 ? { flaws: left } : {}),
  };
}

/** A sheet cut off a bolt as a piece of stock: of the bolt’s price, with its flaws and its place in the repeat. */
export function sheetInStock(
  cloth: ClothCutting,
  { boltId, from }: { boltId: string; from: ClothInStock | undefined },
  sheet: Rect,
  own: Pick<ClothInStock, "id" | "name" | "widthMm" | "lengthMm" | "lot">,
): ClothInStock {
  const flaws = flawsWithin(from?.flaws ?? [], sheet);
  return {
    ...own,
    cloth: cloth.clothId,
    ...(from?.pricePerM === undefined ? {} : { pricePerM: from.pricePerM }),
    ...repeatOf(cloth, boltId, sheet),
    ...(flaws.length === 0 ? {} : { flaws }),
  };
}

type Flaws = NonNullable<ClothInStock["flaws"]>;

/** Flaws of a bolt that lie in a sheet of it, from the sheet's own edges. */
function flawsWithin(flaws: Flaws, sheet: Rect): Flaws {
  return flaws.flatMap(({ fromMm, lengthMm, xMm = 0, widthMm, ...flaw }) => {
    const startMm = Math.max(0, fromMm - sheet.yMm);
    const endMm = Math.min(sheet.lengthMm, fromMm + lengthMm - sheet.yMm);
    const leftMm = Math.max(0, xMm - sheet.xMm);
    const rightMm = Math.min(sheet.widthMm, (widthMm === undefined ? Infinity : xMm + widthMm) - sheet.xMm);
    if (endMm - startMm < LEAST_FLAW_MM || rightMm - leftMm < LEAST_FLAW_MM) return [];
    const across = {
      ...(leftMm > 0 ? { xMm: leftMm } : {}),
      ...(Number.isFinite(rightMm) ? { widthMm: rightMm - leftMm } : {}),
    };
    return [{ ...flaw, fromMm: startMm, lengthMm: endMm - startMm, ...across }];
  });
}

const LEAST_FLAW_MM = 0.01;

/** Where the repeat begins along and across on a sheet cut out of a bolt there. */
export function repeatOf(
  { problem }: ClothCutting,
  boltId: string,
  { xMm, yMm }: Pick<Rect, "xMm" | "yMm">,
): Pick<ClothInStock, "repeatStartMm" | "columnStartMm"> {
  const { repeat, bolts } = problem;
  if (repeat === undefined) return {};
  const { rowMm = 0, columnMm = 0 } = bolts.find(({ id }) => id === boltId) ?? {};
  let fromMm = rowMm - yMm;
  let columnStart = {};
  if (repeat.acrossMm !== undefined && xMm > 0) {
    const columns = Math.ceil((xMm - columnMm) / repeat.acrossMm - 1e-9);
    // Every second column of a half drop begins half a repeat on, and one of them is the first now.
    if (repeat.match === "half-drop" && columns % 2 !== 0) fromMm += repeat.alongMm / 2;
    columnStart = { columnStartMm: nearestTenth(columnMm + columns * repeat.acrossMm - xMm) };
  }
  const rowStart = fromMm - Math.floor(fromMm / repeat.alongMm) * repeat.alongMm;
  return { repeatStartMm: nearestTenth(rowStart), ...columnStart };
}

/** Down to the tenth of a millimetre: nobody measures a remnant finer. */
export function tenth(mm: number): number {
  return Math.floor(mm * 10 + 1e-6) / 10;
}

const nearestTenth = (mm: number): number => Math.round(mm * 10) / 10;
