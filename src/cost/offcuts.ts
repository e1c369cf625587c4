import type { LayerCut } from "../shade/index.ts";
import { SAME_LENGTH_MM } from "../units/index.ts";

/** Equal strips, their length along the bolt where they lie beside a panel. */
export interface Strips {
  count: number;
  widthMm: number;
  lengthMm: number;
}

/**
 * What strips still take off the bolt once the offcuts beside the panels are used up.
 * What finds no place there is cut across the bolt, or along it where it is longer than the bolt is wide.
 */
export function stripsToBuy(
  cut: LayerCut,
  usableWidthMm: number,
  strips: Strips[],
): { lengthMm: number; widthMm: number } {
  const offcuts = offcutsOf(cut);
  let lengthMm = 0;
  let widthMm = 0;
  for (const one of strips) {
    const left = placeBeside(offcuts, one);
    if (left === 0) continue;
    const across = one.lengthMm <= usableWidthMm + SAME_LENGTH_MM;
    const [alongMm, acrossMm] = across ? [one.widthMm, one.lengthMm] : [one.lengthMm, one.widthMm];
    const side = Math.max(1, howMany(usableWidthMm, acrossMm));
    lengthMm += Math.ceil(left / side) * alongMm;
    widthMm = Math.max(widthMm, Math.min(left, side) * acrossMm);
  }
  return { lengthMm, widthMm };
}

interface Offcut {
  widthMm: number;
  lengthMm: number;
}

/** Beside the panels of each drop, and as long as the shortest of them. */
function offcutsOf(cut: LayerCut): Offcut[] {
  const drops = new Map<number, Offcut>();
  for (const { yMm, widthMm, lengthMm } of cut.lays) {
    const drop = drops.get(yMm) ?? { widthMm: cut.usableWidthMm, lengthMm };
    drops.set(yMm, { widthMm: drop.widthMm - widthMm, lengthMm: Math.min(drop.lengthMm, lengthMm) });
  }
  return [...drops.values()];
}

/** Uses offcuts up from their edge; returns how many strips found no place. */
function placeBeside(offcuts: Offcut[], { count, widthMm, lengthMm }: Strips): number {
  let left = count;
  for (const offcut of offcuts) {
    const inOneColumn = howMany(offcut.lengthMm, lengthMm);
    if (left === 0 || inOneColumn === 0) continue;
    const columns = Math.min(howMany(offcut.widthMm, widthMm), Math.ceil(left / inOneColumn));
    offcut.widthMm -= columns * widthMm;
    left = Math.max(0, left - columns * inOneColumn);
  }
  return left;
}

function howMany(roomMm: number, eachMm: number): number {
  return eachMm <= 0 ? 0 : Math.max(0, Math.floor((roomMm + SAME_LENGTH_MM) / eachMm));
}
