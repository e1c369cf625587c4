import { type Block, cutTree, type Sheet } from "./cut-tree.ts";
import type { Grid, GridBolt } from "./grid.ts";
import type { Packing } from "./packing.ts";
import type { BoltPlan, ClothProblem, Cut, Leaf, Placement, Rect, Remnant } from "./problem.ts";

interface PieceBlock extends Block {
  placement: Placement;
}

/** Less than this is not cut off, mm: half of what a size may be raised to the grid. */
const SLIVER_MM = 0.05;

/** A packing in millimetres: where each piece lies, and the cuts that set it free. */
export function layOut(problem: ClothProblem, grid: Grid, packing: Packing): BoltPlan[] {
  return grid.bolts.flatMap((bolt, at) => {
    const blocks = blocksOn(grid, packing, at);
    return blocks.length === 0 ? [] : [cutUp(problem, grid, bolt, blocks)];
  });
}

/** Cuts, leaves and remnants for pieces that lie where they are told, by the solver or by hand. */
export function cutUpByHand(
  problem: ClothProblem,
  grid: Grid,
  boltId: string,
  placements: readonly Placement[],
): BoltPlan | undefined {
  const bolt = grid.bolts.find((one) => one.bolt.id === boltId);
  if (!bolt) return undefined;
  const steps = (mm: number) => Math.round(mm * grid.perMm);
  const blocks = placements.map((placement) => {
    const x1 = steps(placement.xMm);
    const y1 = steps(placement.yMm);
    return { placement, x1, y1, x2: x1 + steps(placement.widthMm), y2: y1 + steps(placement.lengthMm) };
  });
  return cutUp(problem, grid, bolt, blocks);
}

function blocksOn({ items, perMm, gap }: Grid, packing: Packing, at: number): PieceBlock[] {
  return items.flatMap(({ piece, w, h }, item) => {
    if (packing.bolt[item] !== at) return [];
    const turned = packing.w[item] !== w || packing.h[item] !== h;
    const x1 = packing.x[item] ?? 0;
    const y1 = packing.y[item] ?? 0;
    const x2 = x1 + (packing.w[item] ?? 0) - gap;
    const y2 = y1 + (packing.h[item] ?? 0) - gap;
    const placement: Placement = {
      pieceId: piece.id,
      xMm: x1 / perMm,
      yMm: y1 / perMm,
      widthMm: (x2 - x1) / perMm,
      lengthMm: (y2 - y1) / perMm,
      turn: turned ? 90 : 0,
    };
    return [{ x1, x2, y1, y2, placement }];
  });
}

function cutUp(problem: ClothProblem, grid: Grid, bolt: GridBolt, blocks: readonly PieceBlock[]): BoltPlan {
  const whole: Block = { x1: 0, x2: bolt.w - grid.gap, y1: 0, y2: bolt.h - grid.gap };
  const tree = cutTree(whole, blocks, { direction: "across", sliver: SLIVER_MM * grid.perMm });
  const used = blocks.reduce((most, { y2 }) => Math.max(most, y2), 0);
  const { cuts, leaves, remnants } = tree
    ? new Sequence(problem, grid, bolt, used).follow(tree)
    : { cuts: [], leaves: [], remnants: [] };
  const placements = blocks.toSorted((a, b) => a.y1 - b.y1 || a.x1 - b.x1).map(({ placement }) => placement);
  return { boltId: bolt.bolt.id, usedMm: used / grid.perMm, placements, cuts, leaves, remnants };
}

/** Numbers the cuts in the order in which they are made: a sheet, then all of its first part, then its second. */
class Sequence {
  private readonly problem: ClothProblem;
  private readonly perMm: number;
  private readonly bolt: GridBolt;
  private readonly used: number;
  private readonly end: number;
  private readonly cuts: Cut[] = [];
  private readonly leaves: Leaf[] = [];
  private readonly remnants: Remnant[] = [];
  private sheets = 1;

  constructor(problem: ClothProblem, grid: Grid, bolt: GridBolt, used: number) {
    this.problem = problem;
    this.perMm = grid.perMm;
    this.bolt = bolt;
    this.used = used;
    this.end = bolt.h - grid.gap;
  }

  follow(tree: Sheet<PieceBlock>) {
    // A list, not recursion: a long bolt has thousands of layers.
    const todo: { sheet: Sheet<PieceBlock>; id: number }[] = [{ sheet: tree, id: 0 }];
    for (let next = todo.pop(); next; next = todo.pop()) {
      const { sheet, id } = next;
      if (!sheet.cut || !sheet.first || !sheet.second) {
        this.addLeaf(sheet, id);
        continue;
      }
      const first = this.sheets++;
      const second = this.sheets++;
      this.addCut(sheet, sheet.cut, id, first, second);
      todo.push({ sheet: sheet.second, id: second }, { sheet: sheet.first, id: first });
    }
    return { cuts: this.cuts, leaves: this.leaves, remnants: this.remnants };
  }

  private addCut(
    sheet: Block,
    { direction, at, stage, trim }: NonNullable<Sheet<PieceBlock>["cut"]>,
    id: number,
    first: number,
    second: number,
  ): void {
    const cut: Cut = {
      number: this.cuts.length + 1,
      direction,
      stage,
      sheet: id,
      first,
      second,
      atMm: at / this.perMm,
      trim,
    };
    const onBolt = direction === "across" && sheet.y2 === this.end && Number.isFinite(this.end);
    this.cuts.push(onBolt ? { ...cut, boltLeftMm: (this.end - at) / this.perMm } : cut);
  }

  private addLeaf(sheet: Sheet<PieceBlock>, id: number): void {
    const { x1, x2, y1, y2, block } = sheet;
    if (!Number.isFinite(y2)) return;
    const rect: Rect = {
      xMm: x1 / this.perMm,
      yMm: y1 / this.perMm,
      widthMm: (x2 - x1) / this.perMm,
      lengthMm: (y2 - y1) / this.perMm,
    };
    this.leaves.push({ ...rect, sheet: id, holds: this.holds(rect, block, y1 >= this.used) });
  }

  private holds(rect: Rect, block: PieceBlock | undefined, rest: boolean): Leaf["holds"] {
    if (block) return { kind: "piece", pieceId: block.placement.pieceId };
    if (rest) return { kind: "rest" };
    const { keep } = this.problem;
    const fits = (width: number, length: number) => width >= keep.widthMm && length >= keep.lengthMm;
    const worth = fits(rect.widthMm, rect.lengthMm) || fits(rect.lengthMm, rect.widthMm);
    if (!worth || this.flawed(rect)) return { kind: "waste" };
    const { id, name: boltName = id } = this.bolt.bolt;
    const name = `${boltName}, remnant ${this.remnants.length + 1}`;
    this.remnants.push({ ...rect, name, boltId: id });
    return { kind: "remnant", name };
  }

  private flawed({ xMm, yMm, widthMm, lengthMm }: Rect): boolean {
    return this.bolt.bolt.flaws.some(
      (flaw) =>
        flaw.xMm < xMm + widthMm &&
        flaw.xMm + flaw.widthMm > xMm &&
        flaw.yMm < yMm + lengthMm &&
        flaw.yMm + flaw.lengthMm > yMm,
    );
  }
}
