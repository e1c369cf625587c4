import { greatestCommonDivisor as gcd } from "../../units/index.ts";
import type { Bolt, ClothProblem, ClothRepeat, Piece } from "./problem.ts";

/**
 * The problem in whole steps of the grid.
 *
 * Sizes of pieces, bolts and stretches are larger by the gap between cuts, so that pieces may touch: whoever packs
 * these needs no gap of his own. Starts are not shifted by it.
 */
export interface StepGrid {
  /** Steps in a millimetre: 10, or more where sizes and repeat need it. */
  perMm: number;
  /** So many steps a piece may lie behind its place in the repeat: what rounding to the grid may come to. */
  slack: number;
  gap: number;
  items: readonly GridItem[];
  bolts: readonly GridBolt[];
  lattice?: Lattice;
  /** Counts of the groups that pieces are in, and area of the pieces of each lot group. */
  lotAreas: readonly number[];
  /** The lot that each lot group is bound to: `ANY_LOT`, or `NO_LOT` where no bolt is of it. */
  boundLots: readonly number[];
  joins: number;
  /** Every length along the bolt is a multiple of it. */
  stepY: number;
  /** The longest that is cut along, the gap among it. */
  longestLayer: number;
}

export const ANY_LOT = -1;
export const NO_LOT = -2;

export interface GridItem {
  piece: Piece;
  w: number;
  h: number;
  turns: boolean;
  /** Start in the repeat; −1 is anywhere. */
  phaseY: number;
  phaseX: number;
  /** −1 is none. */
  join: number;
  lotGroup: number;
}

export interface GridBolt {
  bolt: Bolt;
  w: number;
  /** Infinity when endless. */
  h: number;
  costPerStep: number;
  /** Bolts of one lot share its number. */
  lot: number;
  rowY: number;
  columnX: number;
  /** Left, right, top and bottom of each flaw, on the outside. */
  flaws: readonly { x1: number; x2: number; y1: number; y2: number }[];
}

export interface Lattice {
  along: number;
  /** 0: no columns. */
  across: number;
  half: boolean;
}

/**
 * Lengths that differ by less are the same, mm: beyond the finest grid a size keeps its fit in the width of the cloth,
 * whatever its rounding and that of its place in the repeat come to.
 */
const SAME_MM = 0.005;
const FINEST_PER_MM = 320;
/** Half a step each for the start of a piece and of the column. */
const FINEST_SLACK = 1;
/** A hundred-thousandth of a step: numbers closer than that are the same length written differently. */
const SAME_STEP = 1e-5;

/** The coarsest grid, 0.1 mm or finer, on which half a repeat and every size is a whole number of steps. */
function stepsPerMm({ repeat, bolts, pieces }: ClothProblem): number {
  const lengths = new Set<number>();
  if (repeat) for (const mm of [repeat.alongMm / 2, repeat.acrossMm ?? 0]) lengths.add(mm);
  for (const { widthMm, rowMm = 0, columnMm = 0 } of bolts) {
    lengths.add(widthMm);
    if (repeat) lengths.add(rowMm).add(columnMm);
  }
  for (const { widthMm, lengthMm, start } of pieces) {
    lengths.add(widthMm).add(lengthMm);
    if (repeat) lengths.add(start?.alongMm ?? 0).add(start?.acrossMm ?? 0);
  }
  const all = [...lengths];
  const areWhole = (perMm: number) =>
    all.every((mm) => Math.abs(mm * perMm - Math.round(mm * perMm)) < SAME_STEP);
  let perMm = 10;
  while (perMm < FINEST_PER_MM && !areWhole(perMm)) perMm *= 2;
  return perMm;
}

export const modulo = (value: number, by: number): number => ((value % by) + by) % by;

/** From a place on to the next of a lattice that lies `offset` beyond it; those hardly passed count as reached. */
export function leadTo(offset: number, by: number, slack: number): number {
  const lead = modulo(offset, by);
  return by - lead <= slack ? 0 : lead;
}

/** Millimetres to steps: up for what must not come out short, down for what there is. */
interface Rounding {
  up: (mm: number) => number;
  down: (mm: number) => number;
}

function roundingOf(perMm: number): Rounding {
  const slack = Math.max(SAME_STEP, perMm === FINEST_PER_MM ? SAME_MM * perMm : 0);
  return {
    up: (mm) => Math.ceil(mm * perMm - slack),
    down: (mm) => Math.floor(mm * perMm + slack),
  };
}

export function stepGridOf(problem: ClothProblem): StepGrid {
  const perMm = stepsPerMm(problem);
  const rounding = roundingOf(perMm);
  const gap = Math.max(0, rounding.up(problem.gapMm));
  const lattice = latticeOf(problem.repeat, perMm);
  const joins = new Numbers();
  const lots = new Numbers();
  const bolts = problem.bolts.map((bolt) => boltOf(bolt, perMm, rounding, gap, lots));
  // Where all cloth is of one lot, every group comes from it.
  const { boundLots = {} } = problem;
  const isBound = Object.keys(boundLots).length > 0;
  const lotGroups = lots.count > 1 || isBound ? new Numbers() : undefined;
  const items = problem.pieces.map((piece) =>
    itemOf(piece, { perMm, rounding, gap, lattice, joins, lotGroups }),
  );
  const lotAreas = Array.from({ length: lotGroups?.count ?? 0 }, () => 0);
  for (const { lotGroup, w, h } of items) {
    if (lotGroup >= 0) lotAreas[lotGroup] = (lotAreas[lotGroup] ?? 0) + w * h;
  }
  const stepY = commonStep(items, gap, lattice, bolts);
  const longestLayer = rounding.down(problem.tableMm ?? Number.POSITIVE_INFINITY) + gap;
  const grid = {
    perMm,
    slack: perMm === FINEST_PER_MM ? FINEST_SLACK : 0,
    gap,
    items,
    bolts,
    lotAreas,
    boundLots: (lotGroups?.names ?? []).map((group) => {
      const lot = boundLots[group];
      return lot === undefined ? ANY_LOT : (lots.known(lotName(lot)) ?? NO_LOT);
    }),
    joins: joins.count,
    stepY,
    longestLayer,
  };
  const bound = items.some(({ phaseX, phaseY }) => phaseX >= 0 || phaseY >= 0);
  return lattice && bound ? { ...grid, lattice } : grid;
}

/** Numbers names as they come. */
class Numbers {
  private readonly byName = new Map<string, number>();

  get count(): number {
    return this.byName.size;
  }

  get names(): string[] {
    return [...this.byName.keys()];
  }

  known(name: string): number | undefined {
    return this.byName.get(name);
  }

  of(name: string | undefined): number {
    if (name === undefined) return -1;
    const known = this.byName.get(name);
    if (known !== undefined) return known;
    this.byName.set(name, this.byName.size);
    return this.byName.size - 1;
  }
}

function latticeOf(repeat: ClothRepeat | undefined, perMm: number): Lattice | undefined {
  if (!repeat) return undefined;
  const along = Math.max(2, 2 * Math.round((repeat.alongMm * perMm) / 2));
  return {
    along,
    across: Math.round((repeat.acrossMm ?? 0) * perMm),
    half: repeat.match === "half-drop",
  };
}

/** Thinner than the finest step that is usual nothing is cut, however fine the grid. */
const THINNEST_MM = 0.1;

interface ItemContext {
  perMm: number;
  rounding: Rounding;
  gap: number;
  lattice: Lattice | undefined;
  joins: Numbers;
  lotGroups: Numbers | undefined;
}

function itemOf(piece: Piece, { perMm, rounding, gap, lattice, joins, lotGroups }: ItemContext): GridItem {
  const { start, join } = piece;
  const least = Math.ceil(THINNEST_MM * perMm);
  const fixedY = lattice && start?.alongMm !== undefined;
  const fixedX = lattice && lattice.across > 0 && start?.acrossMm !== undefined;
  const acrossSteps = fixedX ? Math.round((start?.acrossMm ?? 0) * perMm) : 0;
  // Within the first column the start would have the other half of a half drop where whole columns were taken off.
  const columns = fixedX ? Math.floor(acrossSteps / lattice.across) : 0;
  const halves = (join?.index ?? 0) + columns;
  const drop = lattice?.half && modulo(halves, 2) === 1 ? lattice.along / 2 : 0;
  // A free start of a join is kept as what it adds to the start of the group.
  const phaseY = fixedY ? Math.round((start?.alongMm ?? 0) * perMm) + drop : drop;
  return {
    piece,
    w: Math.max(least, rounding.up(piece.widthMm)) + gap,
    h: Math.max(least, rounding.up(piece.lengthMm)) + gap,
    turns: piece.grain === "free" && piece.nap === "either" && !lattice && piece.widthMm !== piece.lengthMm,
    phaseY: lattice && (fixedY || join) ? modulo(phaseY, lattice.along) : -1,
    phaseX: fixedX ? modulo(acrossSteps, lattice.across) : -1,
    join: lattice && join && !fixedY ? joins.of(join.group) : -1,
    lotGroup: lotGroups?.of(piece.lotGroup) ?? -1,
  };
}

const lotName = (lot: string): string => `lot ${lot}`;

function boltOf(bolt: Bolt, perMm: number, { up, down }: Rounding, gap: number, lots: Numbers): GridBolt {
  const width = down(bolt.widthMm);
  const length = bolt.lengthMm === undefined ? Number.POSITIVE_INFINITY : down(bolt.lengthMm);
  return {
    bolt,
    w: width + gap,
    h: length + gap,
    costPerStep: bolt.costPerMm / perMm,
    lot: lots.of(bolt.lot === undefined ? `bolt ${bolt.id}` : lotName(bolt.lot)),
    rowY: Math.round((bolt.rowMm ?? 0) * perMm),
    columnX: Math.round((bolt.columnMm ?? 0) * perMm),
    flaws: bolt.flaws
      .map(({ xMm, yMm, widthMm, lengthMm }) => ({
        x1: Math.max(0, down(xMm)),
        x2: Math.min(width, up(xMm + widthMm)),
        y1: Math.max(0, down(yMm)),
        y2: Math.min(length, up(yMm + lengthMm)),
      }))
      .filter(({ x1, x2, y1, y2 }) => x2 > x1 && y2 > y1),
  };
}

function commonStep(
  items: readonly GridItem[],
  gap: number,
  lattice: Lattice | undefined,
  bolts: readonly GridBolt[],
): number {
  let step = lattice ? lattice.along / 2 : 0;
  for (const { w, h, turns, phaseY } of items) {
    step = gcd(gcd(step, h - gap), gap);
    if (turns) step = gcd(step, w - gap);
    if (phaseY > 0) step = gcd(step, phaseY);
  }
  if (lattice) for (const { rowY } of bolts) step = gcd(step, Math.abs(rowY));
  for (const { flaws } of bolts) for (const { y2 } of flaws) step = gcd(step, Math.abs(y2));
  return Math.max(1, step);
}

/** The first column of the pattern in which an item may begin from x on. */
export function columnStart(
  { items, lattice, slack }: StepGrid,
  bolt: GridBolt,
  item: number,
  x: number,
): number {
  const { phaseX } = items[item] as GridItem;
  if (!lattice || lattice.across === 0 || phaseX < 0) return x;
  return x + leadTo(bolt.columnX + phaseX - x, lattice.across, slack);
}

/** The first row of the pattern in which an item at x may begin from y on; in a half drop every second column is half a row on. */
export function rowStart(
  { items, lattice, slack }: StepGrid,
  bolt: GridBolt,
  item: number,
  { x, y }: { x: number; y: number },
): number {
  const { phaseX, phaseY } = items[item] as GridItem;
  if (!lattice || phaseY < 0) return y;
  const inColumns = lattice.half && lattice.across > 0 && phaseX >= 0;
  const column = inColumns ? Math.round((x - bolt.columnX - phaseX) / lattice.across) : 0;
  const drop = modulo(column, 2) === 1 ? lattice.along / 2 : 0;
  return y + leadTo(bolt.rowY + phaseY + drop - y, lattice.along, slack);
}
