import type { CutBlock } from "../cut-tree.ts";
import { type GridBolt, type GridItem, modulo, type StepGrid } from "../grid.ts";
import type { Bolt, ClothProblem, Placement } from "../problem.ts";
import { bandOf, type HeldBand, runsAcross } from "./bands.ts";
import { type ColumnAim, fillFree } from "./fill-strip.ts";
import { byBolt, type PieceOnBolt } from "./place-held.ts";

/** Where a band begins and ends along its bolt, steps. */
export interface BandReach {
  from: number;
  to: number;
}

/** Which free areas are filled first, and by what columns. */
export interface FreeFill {
  first: "narrow" | "large";
  aim: ColumnAim;
}

/** How cloth is set aside round held pieces. */
export interface BandChoice {
  /** For each run of held pieces, in the order of bolts and along them; else a band is as long as its held pieces. */
  reaches: readonly (BandReach | undefined)[];
  /** How what lies free beside held pieces is used; left out: it is not. */
  fill?: FreeFill;
}

/** What is left to be cut once held pieces and those beside them are laid. */
export interface Round {
  laid: readonly PieceOnBolt[];
  /** The pieces that remain, on the parts of the bolts before, between and behind the bands. */
  rest: ClothProblem;
  /** The bolt that a part belongs to, and where it begins there, mm. */
  parts: ReadonlyMap<string, { boltId: string; fromMm: number }>;
  /** What is worth a try for each band. */
  otherReaches: readonly (readonly BandReach[])[];
}

/** What lies before a held piece is taken off the bolt whether it is used or not: it costs next to nothing. */
const ALREADY_TAKEN = 1e-3;

/** Lays bands round the held pieces, fills what is free in them, and gives what is left as a problem of its own. */
export function layRound(
  problem: ClothProblem,
  grid: StepGrid,
  held: readonly PieceOnBolt[],
  { reaches, fill }: BandChoice,
): Round {
  const laid = [...held];
  const isLaid = new Set(held.map(({ placement }) => placement.pieceId));
  const heldOn = new Map(byBolt(held).map(({ boltId, placements }) => [boltId, placements]));
  const parts = new Map<string, { boltId: string; fromMm: number }>();
  const bolts: Bolt[] = [];
  const otherReaches: BandReach[][] = [];
  for (const bolt of grid.bolts) {
    const placements = heldOn.get(bolt.bolt.id);
    if (placements === undefined) {
      bolts.push(bolt.bolt);
      continue;
    }
    const open = grid.items.flatMap(({ piece }, item) => (isLaid.has(piece.id) ? [] : [item]));
    let from = 0;
    const addPart = (to: number, isLast: boolean) => {
      if (to - from <= grid.gap) return;
      const id = `${bolt.bolt.id} from ${from}`;
      parts.set(id, { boltId: bolt.bolt.id, fromMm: from / grid.perMm });
      bolts.push(partOfBolt(grid, bolt, { id, from, to, isLast }));
    };
    for (const run of runsAcross(blocksOf(grid, placements))) {
      const shortest = open.reduce((least, item) => Math.min(least, shortestOf(grid, item)), Infinity);
      // Where nothing fits before it, the band takes that in.
      const start = run.y1 - from >= shortest ? run.y1 : from;
      otherReaches.push(reachesWorthATry(grid, { ...run, y1: start }, from, open));
      const reach = reaches[otherReaches.length - 1] ?? { from: start, to: run.y2 };
      const begin = Math.max(from, Math.min(reach.from, start));
      const end = Math.max(run.y2, Math.min(reach.to, bolt.h));
      addPart(begin, false);
      const band = bandOf(run.blocks, bolt.w, begin, end);
      if (fill) laid.push(...fillBand(grid, bolt, band, isLaid, fill));
      from = end;
    }
    addPart(bolt.h, true);
  }
  const { held: _, ...plain } = problem;
  const pieces = problem.pieces.filter(({ id }) => !isLaid.has(id));
  return { laid, rest: { ...plain, bolts, pieces: withTops(grid, pieces, held) }, parts, otherReaches };
}

/** The gap is part of a block, as it is of an item. */
function blocksOf({ perMm, gap }: StepGrid, placements: readonly Placement[]): CutBlock[] {
  return placements.map(({ xMm, yMm, widthMm, lengthMm }) => {
    const x1 = Math.round(xMm * perMm);
    const y1 = Math.round(yMm * perMm);
    return {
      x1,
      y1,
      x2: x1 + Math.round(widthMm * perMm) + gap,
      y2: y1 + Math.round(lengthMm * perMm) + gap,
    };
  });
}

function shortestOf({ items }: StepGrid, item: number): number {
  const { w, h, turns } = items[item] as GridItem;
  return turns ? Math.min(w, h) : h;
}

/** So many beginnings, and so many ends, of one band are tried. */
const MOST_STARTS = 2;
const MOST_ENDS = 4;

/** A band may be so long that another piece lies beside the held ones and begins or ends with them or beyond. */
function reachesWorthATry(
  grid: StepGrid,
  { y1, y2 }: CutBlock,
  free: number,
  open: readonly number[],
): BandReach[] {
  const lengths = [...new Set(open.map((item) => grid.items[item]?.h ?? 0))];
  const starts = [free, ...lengths.map((length) => y2 - length)].filter(
    (start) => start >= free && start < y1,
  );
  return [y1, ...few(starts, MOST_STARTS)].flatMap((from) => {
    const ends = lengths.map((length) => from + length).filter((end) => end > y2);
    return [y2, ...few(ends, MOST_ENDS)].filter((to) => from < y1 || to > y2).map((to) => ({ from, to }));
  });
}

/** Some of many, spread over them; the least among them. */
function few(values: readonly number[], most: number): number[] {
  const sorted = [...new Set(values)].sort((a, b) => a - b);
  const every = Math.max(1, Math.ceil(sorted.length / most));
  return sorted.filter((_, k) => k % every === 0);
}

function partOfBolt(
  { perMm, gap }: StepGrid,
  { bolt, w }: GridBolt,
  { id, from, to, isLast }: { id: string; from: number; to: number; isLast: boolean },
): Bolt {
  const fromMm = from / perMm;
  const { lengthMm: _, rowMm = 0, lot = `bolt ${bolt.id}`, ...rest } = bolt;
  return {
    ...rest,
    id,
    lot,
    widthMm: (w - gap) / perMm,
    ...(Number.isFinite(to) ? { lengthMm: (to - from - gap) / perMm } : {}),
    rowMm: rowMm - fromMm,
    flaws: bolt.flaws
      .map((flaw) => ({ ...flaw, yMm: flaw.yMm - fromMm }))
      .filter(({ yMm, lengthMm }) => yMm + lengthMm > 0),
    costPerMm: isLast ? bolt.costPerMm : ALREADY_TAKEN * bolt.costPerMm,
  };
}

/** Fills the free parts of a band; notes what is laid. */
function fillBand(
  grid: StepGrid,
  bolt: GridBolt,
  band: HeldBand,
  isLaid: Set<string>,
  { first, aim }: FreeFill,
): PieceOnBolt[] {
  const { perMm, gap } = grid;
  const sizeOf = ({ x1, x2, y1, y2 }: HeldBand["free"][number]) =>
    first === "large" ? (x1 - x2) * (y2 - y1) : x2 - x1;
  return band.free
    .toSorted((a, b) => sizeOf(a) - sizeOf(b))
    .flatMap((strip) => {
      const open = grid.items.flatMap(({ piece }, item) => (isLaid.has(piece.id) ? [] : [item]));
      return fillFree(grid, bolt, strip, open, aim).map(({ item, x, y, turned }): PieceOnBolt => {
        const one = grid.items[item] as GridItem;
        isLaid.add(one.piece.id);
        const [w, h] = turned ? [one.h, one.w] : [one.w, one.h];
        const placement: Placement = {
          pieceId: one.piece.id,
          xMm: x / perMm,
          yMm: y / perMm,
          widthMm: (w - gap) / perMm,
          lengthMm: (h - gap) / perMm,
          turn: turned ? 90 : 0,
        };
        return { boltId: bolt.bolt.id, placement };
      });
    });
}

/** Widths to be joined to a held one show the same part of the repeat at their tops. */
function withTops(
  grid: StepGrid,
  pieces: ClothProblem["pieces"],
  held: readonly PieceOnBolt[],
): ClothProblem["pieces"] {
  const { lattice, perMm } = grid;
  if (!lattice) return pieces;
  const tops = new Map<string, number>();
  for (const { boltId, placement } of held) {
    const item = grid.items.find(({ piece }) => piece.id === placement.pieceId);
    const bolt = grid.bolts.find((one) => one.bolt.id === boltId);
    if (item === undefined || bolt === undefined || item.join < 0 || !item.piece.join) continue;
    const top = Math.round(placement.yMm * perMm) - bolt.rowY - Math.max(0, item.phaseY);
    tops.set(item.piece.join.group, modulo(top, lattice.along) / perMm);
  }
  return pieces.map((piece) => {
    const alongMm = piece.join && tops.get(piece.join.group);
    return alongMm === undefined ? piece : { ...piece, start: { ...piece.start, alongMm } };
  });
}
