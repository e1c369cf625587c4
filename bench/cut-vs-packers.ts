import { type ClothProblem, ClothSearch } from "../src/cutting/index.ts";
import { HOPPER_C, stripProblem } from "../test/cutting/strips.ts";
import { clothJob } from "./cloth-jobs.ts";
import { type Figure, median, timed } from "./figure.ts";
import { guillotinePacker, maxRects, type Packer, scanHeight } from "./packers.ts";

/** Time that we take for a strip, ms: what an answer at once may take. */
const OURS_MS = 50;
/** Where they are shorter than we are, we give up after so long. */
const MOST_MS = 1000;
/** Cloth is scanned in steps of half a hundredth of the bound. */
const CLOTH_STEP = 0.005;

interface Case {
  problem: ClothProblem;
  step: number;
}

function cases(): Case[] {
  const strips = HOPPER_C.map((strip) => ({ problem: stripProblem(strip), step: 1 }));
  const cloths = Array.from({ length: 10 }, (_, seed) => {
    const problem = clothJob({ seed, pieces: 30, each: 2 });
    const area = problem.pieces.reduce((sum, { widthMm, lengthMm }) => sum + widthMm * lengthMm, 0);
    const step = Math.ceil((CLOTH_STEP * area) / (problem.bolts[0]?.widthMm ?? 1));
    return { problem: { ...problem, cutting: { kind: "straight" as const } }, step };
  });
  return [...strips, ...cloths];
}

function ours({ problem }: Case, goal: number, mostMs: number): number {
  const begun = performance.now();
  const search = new ClothSearch(problem);
  while (search.cost > goal && performance.now() - begun < mostMs && search.improve(64));
  return search.cost;
}

function theirs(packer: Packer, { problem, step }: Case): number {
  const width = problem.bolts[0]?.widthMm ?? 1;
  const items = problem.pieces.map(({ id, widthMm, lengthMm }) => ({
    name: id,
    width: widthMm,
    height: lengthMm,
  }));
  const area = items.reduce((sum, item) => sum + item.width * item.height, 0);
  const tallest = Math.max(...items.map(({ height }) => height));
  return scanHeight(packer, items, width, Math.max(tallest, Math.ceil(area / width)), step);
}

/**
 * Length that general packers need for the same pieces, by ours; and their time, by ours until we are as short (the median). In
 * fixed orientation; where we are never as short our time is all that we were given.
 */
export async function cutVsPackers(): Promise<Figure[]> {
  const all = cases();
  const lengths = all.map((one) => ours(one, 0, OURS_MS));
  return [guillotinePacker(), await maxRects()].flatMap((packer) => {
    let ratios = 0;
    const times: number[] = [];
    for (const [at, one] of all.entries()) {
      let length = 0;
      const theirMs = timed(() => {
        length = theirs(packer, one);
      });
      times.push(theirMs / timed(() => ours(one, length, MOST_MS)));
      ratios += length / (lengths[at] ?? 1);
    }
    const ratio = ratios / all.length;
    const time = median(times);
    const peer = { peer: packer.name, better: "higher" as const, unit: "ratio", goal: 1 };
    return [
      { ...peer, name: `cut.vs-packers.${packer.name}.length`, value: ratio, ratio },
      { ...peer, name: `cut.vs-packers.${packer.name}.time`, value: time, ratio: time },
    ];
  });
}
