import { closedUp } from "./close-up.ts";
import { inTableOrder, type OrderedStep } from "./cut-order.ts";
import { apart, type CutBlock, type CutSheet, cutTree } from "./cut-tree.ts";
import type { GridBolt, StepGrid } from "./grid.ts";
import type { Packing } from "./packing.ts";
import type { BoltPlan, ClothProblem, Cut, Leaf, Placement, Rect, Remnant } from "./problem.ts";

interface PieceBlock extends CutBlock {
  placement: Placement;
}

/** Less than this is not cut off, mm: half of what a size may be raised to the grid. */
const SLIVER_MM = 0.05;

/** Where nobody says how long the table is, so much is cut off the bolt at a time, mm (our choice). */
const USUAL_TABLE_MM = 10_000;

/** A packing in millimetres: where each piece lies, and the cuts that set it free. */
export function layOutBolts(problem: ClothProblem, grid: StepGrid, packing: Packing): BoltPlan[] {
  return grid.bolts.flatMap((bolt, at) => {
    const asFound = closed(blocksOn(grid, packing, at), problem, grid, bolt);
    const blocks = isDoubled(problem, bolt) ? besideEqual(asFound, grid) : asFound;
    return blocks.length === 0 ? [] : [cutUp(problem, grid, bolt, blocks)];
  });
}

/** Cuts, leaves and remnants for pieces that lie where they are told, by the solver or by hand. */
export function cutUpByHand(
  problem: ClothProblem,
  grid: StepGrid,
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

function blocksOn({ items, perMm, gap }: StepGrid, packing: Packing, at: number): PieceBlock[] {
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

function cutUp(
  problem: ClothProblem,
  grid: StepGrid,
  bolt: GridBolt,
  blocks: readonly PieceBlock[],
): BoltPlan {
  const whole: CutBlock = { x1: 0, x2: bolt.w - grid.gap, y1: 0, y2: bolt.h - grid.gap };
  const tree = cutTree(whole, blocks, {
    direction: "across",
    sliver: SLIVER_MM * grid.perMm,
    fromRight: problem.table?.leftHanded === true,
  });
  const used = blocks.reduce((most, { y2 }) => Math.max(most, y2), 0);
  const { cuts, leaves, remnants } = tree
    ? new Sequence(problem, grid, bolt, used).follow(tree)
    : { cuts: [], leaves: [], remnants: [] };
  const placements = blocks.toSorted((a, b) => a.y1 - b.y1 || a.x1 - b.x1).map(({ placement }) => placement);
  return { boltId: bolt.bolt.id, usedMm: used / grid.perMm, placements, cuts, leaves, remnants };
}

/** On plain cloth without a flaw it is all one where across it a piece lies. */
function closed(blocks: PieceBlock[], { table }: ClothProblem, grid: StepGrid, bolt: GridBolt): PieceBlock[] {
  if (grid.lattice || bolt.flaws.length > 0) return blocks;
  const { gap, perMm } = grid;
  const way = { gap, fromRight: table?.leftHanded === true };
  const moved = closedUp(blocks, { from: 0, to: bolt.w - gap }, way);
  return blocks.map((block) => {
    const { x1, x2 } = moved.get(block) ?? block;
    return { ...block, x1, x2, placement: { ...block.placement, xMm: x1 / perMm } };
  });
}

/** A print must be seen while it is cut, and a flaw lies under the upper length. */
function isDoubled({ table, repeat }: ClothProblem, { flaws }: GridBolt): boolean {
  return table?.doubled === true && repeat === undefined && flaws.length === 0;
}

/** Lengths that are cut alike come next to each other; where there is cloth lost between lengths all stay as they are. */
function besideEqual(blocks: PieceBlock[], { gap, perMm }: StepGrid): PieceBlock[] {
  const lengths = apart(blocks, "across").map((group) => ({
    group,
    from: Math.min(...group.map(({ y1 }) => y1)),
    to: Math.max(...group.map(({ y2 }) => y2)),
  }));
  const isClose = lengths.every(({ from }, n) => from === (n === 0 ? 0 : (lengths[n - 1]?.to ?? 0) + gap));
  if (!isClose) return blocks;
  const alike = new Map<string, typeof lengths>();
  for (const length of lengths) {
    const { group, from } = length;
    const shape = group
      .map(({ x1, x2, y1, y2 }) => `${x1} ${x2} ${y1 - from} ${y2 - from}`)
      .sort()
      .join(";");
    alike.set(shape, [...(alike.get(shape) ?? []), length]);
  }
  let y = 0;
  return [...alike.values()].flat().flatMap(({ group, from, to }) => {
    const shift = y - from;
    y += to - from + gap;
    return group.map(({ placement, ...block }) => {
      const y1 = block.y1 + shift;
      return { ...block, y1, y2: block.y2 + shift, placement: { ...placement, yMm: y1 / perMm } };
    });
  });
}

/** Numbers the cuts in the order in which they are made at the table. */
class Sequence {
  private readonly problem: ClothProblem;
  private readonly perMm: number;
  private readonly bolt: GridBolt;
  private readonly used: number;
  private readonly end: number;
  private readonly cuts: Cut[] = [];
  private readonly leaves: Leaf[] = [];
  private readonly remnants: Remnant[] = [];

  constructor(problem: ClothProblem, grid: StepGrid, bolt: GridBolt, used: number) {
    this.problem = problem;
    this.perMm = grid.perMm;
    this.bolt = bolt;
    this.used = used;
    this.end = bolt.h - grid.gap;
  }

  follow(tree: CutSheet<PieceBlock>) {
    const { table, tableMm = USUAL_TABLE_MM } = this.problem;
    const order = {
      most: tableMm * this.perMm,
      doubled: isDoubled(this.problem, this.bolt),
      leftHanded: table?.leftHanded === true,
    };
    for (const step of inTableOrder(tree, this.end, order)) {
      if (step.kind === "done") this.addLeaf(step.sheet, step.id);
      else this.addCut(step);
    }
    return { cuts: this.cuts, leaves: this.leaves, remnants: this.remnants };
  }

  private addCut(step: Extract<OrderedStep<PieceBlock>, { kind: "cut" }>): void {
    const { sheet, id, first, second, withLast } = step;
    const { direction, at, stage, trim } = step.cut;
    const before = this.cuts.length;
    const cut: Cut = {
      number: before + 1,
      direction,
      stage,
      sheet: id,
      first,
      second,
      atMm: at / this.perMm,
      trim,
      ...(withLast ? { withCut: before } : {}),
    };
    const onBolt = direction === "across" && sheet.y2 === this.end && Number.isFinite(this.end);
    this.cuts.push(onBolt ? { ...cut, boltLeftMm: (this.end - at) / this.perMm } : cut);
  }

  private addLeaf(sheet: CutSheet<PieceBlock>, id: number): void {
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
