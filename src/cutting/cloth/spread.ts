import { type GridItem, type Lattice, leadTo, modulo, type StepGrid } from "./grid.ts";

/**
 * Items enlarged by the cloth that the repeat takes from each of them, whatever lies next to it.
 *
 * Below an item with start φ and length h the next cannot start before the repeat comes round to its own start, so at
 * least g = min over the others of (φ′ − φ − h) mod R is lost, but below the last. A plan of length L is one of
 * enlarged items of length L + tail.
 */
export interface Spread {
  w: readonly number[];
  h: readonly number[];
  /** What the last item of a bolt may save, in steps, the gap among it. */
  tailX: number;
  tailY: number;
  /** No item starts earlier on a bolt, in steps, where there is one bolt alone. */
  lead: number;
  /** All ends of enlarged items are multiples of it, counted from the lead; 0 where there is none. */
  rows: number;
}

export function plainSpread({ items, gap }: StepGrid): Spread {
  return { w: items.map(({ w }) => w), h: items.map(({ h }) => h), tailX: 0, tailY: gap, lead: 0, rows: 0 };
}

export function latticeSpread(grid: StepGrid, lattice: Lattice): Spread {
  const { items, gap, slack } = grid;
  const half = lattice.half && lattice.across > 0 && items.some(({ phaseX }) => phaseX >= 0);
  const [first] = items;
  const common =
    first !== undefined &&
    items.length > 1 &&
    !half &&
    items.every(({ phaseY, join }) => phaseY >= 0 && join < 0 && phaseY === first.phaseY);
  const g = common
    ? items.map(({ h }) => nearest(-h, lattice.along, slack))
    : extras(
        items,
        (item) => (item.phaseY < 0 ? undefined : { group: item.join, phase: item.phaseY, size: item.h }),
        half ? lattice.along / 2 : lattice.along,
        slack,
      );
  const gx =
    lattice.across > 0
      ? extras(
          items,
          (item) => (item.phaseX < 0 ? undefined : { group: -1, phase: item.phaseX, size: item.w }),
          lattice.across,
          slack,
        )
      : items.map(() => 0);
  const most = g.reduce((a, b) => Math.max(a, b), 0);
  return {
    w: items.map(({ w }, i) => w + (gx[i] ?? 0)),
    h: items.map(({ h }, i) => h + (g[i] ?? 0)),
    tailX: gx.reduce((a, b) => Math.max(a, b), 0),
    tailY: gap + most,
    lead: leadOf(grid, lattice, half),
    rows: common ? lattice.along : 0,
  };
}

function leadOf({ items, bolts, slack }: StepGrid, { along }: Lattice, half: boolean): number {
  const [only] = bolts;
  if (!only || bolts.length > 1) return 0;
  const period = half ? along / 2 : along;
  return items.reduce(
    (least, { phaseY, join }) =>
      Math.min(least, phaseY < 0 || join >= 0 ? 0 : leadTo(phaseY + only.rowY, period, slack)),
    along,
  );
}

/** From a place on to the next of a lattice, or back to one hardly passed. */
function nearest(offset: number, by: number, slack: number): number {
  const lead = modulo(offset, by);
  return by - lead <= slack ? lead - by : lead;
}

interface Start {
  group: number;
  phase: number;
  size: number;
}

/** What is lost behind each item at least; nothing where an item may come that starts anywhere. */
function extras(
  items: readonly GridItem[],
  startOf: (item: GridItem) => Start | undefined,
  period: number,
  slack: number,
): number[] {
  const starts = items.map(startOf);
  const groups = new Set(starts.map((start) => start?.group));
  // Two joins that are free against each other, or anything without a start, can follow at once.
  if (starts.some((start) => start === undefined) || groups.size > 1) return items.map(() => 0);
  const phases = new Map<number, number>();
  for (const start of starts) if (start) phases.set(start.phase, (phases.get(start.phase) ?? 0) + 1);
  return starts.map((start) => {
    if (!start) return 0;
    let least = Number.POSITIVE_INFINITY;
    for (const [phase, count] of phases) {
      if (phase === start.phase && count === 1) continue;
      // Of two neighbours the first may lie behind its place and the second on it.
      least = Math.min(least, Math.max(0, leadTo(phase - start.phase - start.size, period, slack) - slack));
    }
    // An item that is alone has none behind it.
    return Number.isFinite(least) ? least : 0;
  });
}
