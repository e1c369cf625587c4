import { columnStart, type GridBolt, type GridItem, rowStart, type StepGrid } from "../grid.ts";
import type { Area, FreeArea } from "./bands.ts";

/** A piece in a strip, in steps. */
export interface StripPlace {
  item: number;
  x: number;
  y: number;
  turned: boolean;
}

/** Sums of lengths looked at in all; a strip that asks for more is filled longest first. */
const MOST_SUMS = 4_000_000;

/** What makes a column the best: that it loses the least of its width, or that it holds the most cloth. */
export type ColumnAim = "dense" | "full";

/**
 * Pieces laid in what is free of a band: in columns side by side, each as wide as the piece that fills it best, or in
 * one stack.
 *
 * @param items those still to be laid, as indices of the grid
 */
export function fillFree(
  grid: StepGrid,
  bolt: GridBolt,
  { columns, ...free }: FreeArea,
  items: readonly number[],
  aim: ColumnAim,
): StripPlace[] {
  if (!columns) return fillStrip(grid, bolt, free, items);
  const places: StripPlace[] = [];
  for (let rest: Area = free; ; ) {
    const open = items.filter((item) => !places.some((one) => one.item === item));
    const best = bestColumn(grid, bolt, rest, open, aim);
    if (best === undefined) return places;
    places.push(...best.places);
    rest = { ...rest, x1: best.endX };
  }
}

/** The best column at the left of an area. */
function bestColumn(
  grid: StepGrid,
  bolt: GridBolt,
  area: Area,
  items: readonly number[],
  aim: ColumnAim,
): { endX: number; places: StripPlace[] } | undefined {
  const ends = new Set(items.flatMap((item) => waysInto(grid, bolt, area, item).map(({ x, w }) => x + w)));
  let best: { endX: number; places: StripPlace[]; worth: number } | undefined;
  for (const x2 of [...ends].sort((a, b) => b - a)) {
    const places = fillStrip(grid, bolt, { ...area, x2 }, items);
    // What is as wide as allowed may have stayed out: the column ends where its pieces do.
    const endX = places.reduce((most, place) => Math.max(most, rightOf(grid, place)), area.x1);
    const covered = places.reduce((sum, { item }) => sum + areaOf(grid, item), 0);
    const worth = aim === "dense" ? covered / (endX - area.x1) : covered;
    if (worth > (best?.worth ?? 0)) best = { endX, places, worth };
  }
  return best;
}

function rightOf({ items }: StepGrid, { item, x, turned }: StripPlace): number {
  const { w, h } = items[item] as GridItem;
  return x + (turned ? h : w);
}

function areaOf({ items }: StepGrid, item: number): number {
  const { w, h } = items[item] as GridItem;
  return w * h;
}

/**
 * Pieces stacked in a strip of a bolt, one behind the other: on plain cloth those that cover the most of it (a
 * knapsack of their lengths), on a pattern or beside flaws one after the other by their area.
 */
function fillStrip(grid: StepGrid, bolt: GridBolt, strip: Area, items: readonly number[]): StripPlace[] {
  const ways = items.flatMap((item) => waysInto(grid, bolt, strip, item).slice(0, 1));
  if (ways.length === 0) return [];
  const isPlain = grid.lattice === undefined && !bolt.flaws.some((flaw) => meets(flaw, strip));
  const capacity = Math.floor((strip.y2 - strip.y1) / grid.stepY);
  const isFew = ways.length * capacity <= MOST_SUMS;
  const chosen = isPlain && isFew ? fullest(ways, capacity, grid.stepY) : ways;
  return stacked(grid, bolt, strip, chosen);
}

interface Way {
  item: number;
  x: number;
  w: number;
  h: number;
  turned: boolean;
}

/** How an item goes into a strip, the way that takes less of its length first. */
function waysInto(grid: StepGrid, bolt: GridBolt, strip: Area, item: number): Way[] {
  const one = grid.items[item] as GridItem;
  const x = columnStart(grid, bolt, item, strip.x1);
  const ways: Way[] = [{ item, x, w: one.w, h: one.h, turned: false }];
  if (one.turns) ways.push({ item, x, w: one.h, h: one.w, turned: true });
  return ways
    .filter(({ w, h }) => x + w <= strip.x2 && strip.y1 + h <= strip.y2)
    .toSorted((a, b) => a.h - b.h);
}

/** The ways whose lengths fit into the capacity and that cover the most cloth. */
function fullest(ways: readonly Way[], capacity: number, step: number): Way[] {
  const worth = new Float64Array(capacity + 1);
  const taken = ways.map(() => new Uint8Array(capacity + 1));
  for (const [k, { w, h }] of ways.entries()) {
    // All lengths along a bolt, the gap among them, are whole steps.
    const length = h / step;
    const marks = taken[k] as Uint8Array;
    for (let at = capacity; at >= length; at--) {
      const value = (worth[at - length] ?? 0) + w * h;
      if (value > (worth[at] ?? 0)) {
        worth[at] = value;
        marks[at] = 1;
      }
    }
  }
  const chosen: Way[] = [];
  let at = capacity;
  for (let k = ways.length - 1; k >= 0; k--) {
    const way = ways[k] as Way;
    if (!taken[k]?.[at]) continue;
    chosen.push(way);
    at -= way.h / step;
  }
  return chosen;
}

/** The largest first, each at its next place in the repeat, as long as there is room. */
function stacked(grid: StepGrid, bolt: GridBolt, strip: Area, ways: readonly Way[]): StripPlace[] {
  const places: StripPlace[] = [];
  let y = strip.y1;
  for (const { item, w, h, turned } of ways.toSorted((a, b) => b.w * b.h - a.w * a.h)) {
    // The place of a group of joined widths is not known yet.
    if ((grid.items[item] as GridItem).join >= 0) continue;
    const x = columnStart(grid, bolt, item, strip.x1);
    const start = startAlong(grid, bolt, { item, x, y, w, h });
    if (x + w > strip.x2 || start + h > strip.y2) continue;
    places.push({ item, x, y: start, turned });
    y = start + h;
  }
  return places;
}

/** The next start along that is in its place in the repeat and clear of flaws. */
function startAlong(
  grid: StepGrid,
  bolt: GridBolt,
  { item, x, y, w, h }: { item: number; x: number; y: number; w: number; h: number },
): number {
  const inPlace = (from: number) => rowStart(grid, bolt, item, { x, y: from });
  let start = inPlace(y);
  for (let moved = true; moved; ) {
    const at = start;
    const flaw = bolt.flaws.find((one) => meets(one, { x1: x, x2: x + w, y1: at, y2: at + h }));
    moved = flaw !== undefined;
    if (flaw) start = inPlace(flaw.y2);
  }
  return start;
}

function meets(a: Area, b: Area): boolean {
  return a.x1 < b.x2 && a.x2 > b.x1 && a.y1 < b.y2 && a.y2 > b.y1;
}
