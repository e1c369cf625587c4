import type { Cloth } from "../job/index.ts";
import type { Lay, Trim, TrimBolt } from "../shade-plan/index.ts";
import { SAME_LENGTH_MM } from "../units/index.ts";
import type { BareCut } from "./cut-layer.ts";

interface Area {
  xMm: number;
  yMm: number;
  widthMm: number;
  lengthMm: number;
}

/**
 * Where the pieces beside the panels come from: first what is left beside the panels of a layer of the same cloth, then
 * the cloth beyond them. Blocks of equal pieces, so that all come off with straight cuts.
 */
export function layTrims(
  trims: readonly Trim[],
  layers: readonly BareCut[],
  cloths: ReadonlyMap<string, Cloth>,
): TrimBolt[] {
  const ids = [...new Set(trims.map((trim) => trim.clothId))];
  return ids.flatMap((clothId) => {
    const cloth = cloths.get(clothId);
    if (cloth === undefined) return [];
    const layer =
      layers.find((cut) => cut.layer === "lining" && cut.clothId === clothId) ??
      layers.find((cut) => cut.clothId === clothId);
    const own = trims.filter((trim) => trim.clothId === clothId);
    return [boltOf(own, cloth, layer)];
  });
}

function boltOf(trims: readonly Trim[], cloth: Cloth, layer: BareCut | undefined): TrimBolt {
  const usableWidthMm = cloth.usableWidthMm;
  const fromMm = layer?.lengthMm ?? 0;
  const free = layer === undefined ? [] : leftBeside(layer);
  const lays: Lay[] = [];
  let endMm = fromMm;
  const longestFirst = [...trims].sort((a, b) => b.lengthMm - a.lengthMm || b.widthMm - a.widthMm);
  for (const trim of longestFirst) {
    // Along the bolt beside a panel first: what is left there is long and narrow.
    const left = fill(trim, trim.count, turnsOf(trim).reverse(), free, lays);
    if (left === 0) continue;
    const [acrossMm, alongMm] = turnsOf(trim).find(([a]) => a <= usableWidthMm + SAME_LENGTH_MM) ?? [0, 0];
    if (acrossMm === 0) {
      endMm += trim.lengthMm * left;
      continue;
    }
    const side = Math.max(1, howMany(usableWidthMm, acrossMm));
    const lengthMm = Math.ceil(left / side) * alongMm;
    const shelf = [{ xMm: 0, yMm: endMm, widthMm: usableWidthMm, lengthMm }];
    fill(trim, left, [[acrossMm, alongMm]], shelf, lays);
    free.push(...shelf);
    endMm += lengthMm;
  }
  return {
    clothId: cloth.id,
    clothName: cloth.name,
    usableWidthMm,
    ...(layer === undefined ? {} : { beside: layer.layer }),
    lays,
    fromMm,
    lengthMm: endMm - fromMm,
  };
}

/** Sizes across and along the bolt in which a piece may lie, the better first: a free piece across, where that is short. */
function turnsOf({ grain, widthMm, lengthMm }: Trim): Turn[] {
  const warp: Turn = [widthMm, lengthMm];
  const weft: Turn = [lengthMm, widthMm];
  return { warp: [warp], weft: [weft], free: [weft, warp] }[grain];
}

type Turn = [acrossMm: number, alongMm: number];

/** Fills free areas with blocks of a piece, turned one way or the other; gives how many found no place. */
function fill(trim: Trim, count: number, turns: readonly Turn[], free: Area[], lays: Lay[]): number {
  let left = count;
  for (const [acrossMm, alongMm] of turns) {
    for (let i = 0; i < free.length && left > 0; i++) {
      const area = free[i];
      if (area === undefined) continue;
      const down = howMany(area.lengthMm, alongMm);
      const side = down === 0 ? 0 : Math.min(howMany(area.widthMm, acrossMm), Math.ceil(left / down));
      if (side === 0) continue;
      const used = Math.min(left, side * down);
      for (let n = 0; n < used; n++) {
        lays.push({
          panelId: trim.id,
          xMm: area.xMm + Math.floor(n / down) * acrossMm,
          yMm: area.yMm + (n % down) * alongMm,
          widthMm: acrossMm,
          lengthMm: alongMm,
        });
      }
      left -= used;
      const takenMm = side * acrossMm;
      const deep = Math.min(down, used) * alongMm;
      free.splice(
        i,
        1,
        { ...area, xMm: area.xMm + takenMm, widthMm: area.widthMm - takenMm },
        { xMm: area.xMm, yMm: area.yMm + deep, widthMm: takenMm, lengthMm: area.lengthMm - deep },
      );
    }
  }
  return left;
}

/** What a layer leaves of its cloth: before the first cut, beside the panels, and between two drops. */
function leftBeside(cut: BareCut): Area[] {
  const starts = [...new Set(cut.lays.map((lay) => lay.yMm))].sort((a, b) => a - b);
  const whole = { xMm: 0, widthMm: cut.usableWidthMm };
  const areas: Area[] = [{ ...whole, yMm: 0, lengthMm: starts[0] ?? 0 }];
  starts.forEach((yMm, i) => {
    const row = cut.lays.filter((lay) => lay.yMm === yMm).sort((a, b) => a.xMm - b.xMm);
    const longest = Math.max(...row.map((lay) => lay.lengthMm));
    let xMm = 0;
    for (const lay of row) {
      areas.push({ xMm, yMm, widthMm: lay.xMm - xMm, lengthMm: longest });
      xMm = lay.xMm + lay.widthMm;
    }
    areas.push({ xMm, yMm, widthMm: cut.usableWidthMm - xMm, lengthMm: longest });
    const next = starts[i + 1] ?? cut.lengthMm;
    areas.push({ ...whole, yMm: yMm + longest, lengthMm: next - yMm - longest });
  });
  return areas.filter((area) => area.widthMm > 1 && area.lengthMm > 1);
}

function howMany(roomMm: number, eachMm: number): number {
  return eachMm <= 0 ? 0 : Math.max(0, Math.floor((roomMm + SAME_LENGTH_MM) / eachMm));
}
