import { leadTo, type StepGrid } from "./grid.ts";
import { layersOn } from "./layers-of.ts";
import { type Packing, packed } from "./packing.ts";

/**
 * The usual case of a repeat: one bolt without flaws, and every piece begins at the same place of the repeat. Lengths
 * raised to whole repeats then make it a problem of plain cloth, but for the tail of the last layer.
 */
export function byRows(grid: StepGrid):
  | {
      grid: StepGrid;
      finish: (packing: Packing) => Packing;
      aim: (best: Packing, saving: number) => ArrayLike<number>;
    }
  | undefined {
  const { lattice } = grid;
  const [bolt] = grid.bolts;
  if (!lattice || !bolt || !isByRows(grid)) return undefined;
  const repeat = lattice.along;
  const lead = leadTo((grid.items[0]?.phaseY ?? 0) + bolt.rowY, repeat, grid.slack);
  const seen = rounded(grid, repeat);
  return {
    grid: seen,
    finish: (packing) => unrounded(grid, lead, packing),
    aim: (best, saving) => {
      const rows = Math.ceil(((best.used[0] ?? 0) - lead) / repeat);
      const fewer = Math.floor(((best.used[0] ?? 0) - lead - saving / bolt.costPerStep) / repeat) + 1;
      return [Math.max(0, Math.min(rows - 1, fewer)) * repeat - grid.gap];
    },
  };
}

function isByRows({ items, bolts, lotAreas }: StepGrid): boolean {
  const [first] = items;
  const [bolt] = bolts;
  return (
    bolts.length === 1 &&
    bolt?.flaws.length === 0 &&
    bolt.h === Number.POSITIVE_INFINITY &&
    bolt.costPerStep > 0 &&
    lotAreas.length === 0 &&
    first !== undefined &&
    items.every(
      ({ phaseY, phaseX, join }) => phaseY >= 0 && phaseY === first.phaseY && phaseX < 0 && join < 0,
    )
  );
}

function rounded({ lattice: _, ...grid }: StepGrid, repeat: number): StepGrid {
  const items = grid.items.map((item) => ({ ...item, h: Math.ceil(item.h / repeat) * repeat, phaseY: -1 }));
  return { ...grid, items, stepY: repeat };
}

/** Lengths as they are again; the layer that saves most at its end goes last. */
function unrounded(grid: StepGrid, lead: number, packing: Packing): Packing {
  const h = Int32Array.from(grid.items, (item) => item.h);
  const layers = layersOn(packing, 0).map(({ items, y: start, length }) => {
    const end = items.reduce((most, item) => Math.max(most, (packing.y[item] ?? 0) + (h[item] ?? 0)), 0);
    return { items, start, length, saved: start + length - end };
  });
  const last = layers.reduce((best, layer) => (layer.saved > best.saved ? layer : best));
  const order = [...layers.filter((layer) => layer !== last), ...layers.filter((layer) => layer === last)];
  const y = new Float64Array(packing.y.length);
  let top = lead;
  for (const { items, start, length } of order) {
    for (const item of items) y[item] = top + (packing.y[item] ?? 0) - start;
    top += length;
  }
  return packed(grid, { x: packing.x, y, bolt: packing.bolt, w: packing.w, h });
}
