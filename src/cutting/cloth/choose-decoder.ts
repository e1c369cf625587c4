import { aimAt } from "./aim.ts";
import { BoxDecoder } from "./box-decoder.ts";
import type { Decoder } from "./decoder.ts";
import { FitMasks } from "./fit-masks.ts";
import type { GridBolt, StepGrid } from "./grid.ts";
import { LayerDecoder } from "./layer-decoder.ts";
import type { Packing } from "./packing.ts";
import type { ClothProblem } from "./problem.ts";
import { byRows } from "./rows.ts";

/** A decoder with what the search must know of it. */
export interface DecoderSetting {
  decoder: Decoder;
  /** The problem as the decoder sees it. */
  grid: StepGrid;
  /** Bolts in the order in which they are cut. */
  sequence: readonly number[];
  /** What the decoder has laid, as it lies on the bolt. */
  finish: (packing: Packing) => Packing;
  /** Lengths for a plan that costs so much less than the best. */
  aim: (best: Packing, saving: number, tight: boolean) => ArrayLike<number>;
}

/** Stages of layers where any number is allowed. */
export const MANY_STAGES = 9;

/** The ways to look at the problem. */
export function settingsFor(problem: ClothProblem, grid: StepGrid): DecoderSetting[] {
  const rows = byRows(grid);
  const seen = rows?.grid ?? grid;
  const sequence = byCost(grid);
  const aim = rows
    ? rows.aim
    : (best: Packing, saving: number, tight: boolean) => aimAt(grid, sequence, best, saving, tight);
  const finish = rows ? rows.finish : (packing: Packing) => packing;
  return decodersFor(problem, seen, sequence).map((decoder) => ({
    decoder,
    grid: seen,
    sequence,
    finish,
    aim,
  }));
}

function decodersFor({ cutting }: ClothProblem, grid: StepGrid, sequence: readonly number[]): Decoder[] {
  const { items, bolts, lotAreas, lattice, gap } = grid;
  const stages = cutting.kind === "straight" ? cutting.stages : undefined;
  const layers = new LayerDecoder(grid, new FitMasks(items, kindsOf(grid)), sequence, stages ?? MANY_STAGES);
  const [only] = bolts;
  const simple =
    grid.longestLayer === Number.POSITIVE_INFINITY &&
    bolts.length === 1 &&
    only?.flaws.length === 0 &&
    lotAreas.length === 0 &&
    !lattice;
  return stages === undefined && simple
    ? [new BoxDecoder(new FitMasks(items), only.w, gap), layers]
    : [layers];
}

/** Bolts in the order of their cost by area. */
function byCost({ bolts }: StepGrid): number[] {
  const rate = (at: number) => {
    const { costPerStep, w } = bolts[at] as GridBolt;
    return costPerStep / w;
  };
  return bolts.map((_, at) => at).sort((a, b) => rate(a) - rate(b));
}

/** From so many equal items on it pays to know which are. */
const FEW_KINDS = 0.25;

/** One number for all items that fit the same places, where there are few such kinds. */
function kindsOf({ items, lattice, lotAreas }: StepGrid): Int32Array | undefined {
  const isPlain = !lattice && lotAreas.length === 0;
  if (isPlain) return undefined;
  const kinds = new Map<string, number>();
  const numbers = items.map(({ w, h, turns, phaseX, phaseY, join, lotGroup }, item) => {
    // One that may be turned, or that others follow, is of its own kind.
    const key = turns || join >= 0 ? `own ${item}` : `${w} ${h} ${phaseX} ${phaseY} ${lotGroup}`;
    const number = kinds.get(key) ?? kinds.size;
    kinds.set(key, number);
    return number;
  });
  return kinds.size <= FEW_KINDS * items.length ? Int32Array.from(numbers) : undefined;
}
