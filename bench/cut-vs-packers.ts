import { type ClothProblem, ClothSearch } from "../src/cutting/index.ts";
import { HOPPER_C, stripProblem } from "../test/cutting/strips.ts";
import { clothJob } from "./cloth-jobs.ts";
import { type Figure, timed } from "./figure.ts";
import { guillotinePacker, maxRects, type Packer, scanHeight } from "./packers.ts";

/** Time that we take for a strip, ms: what an answer at once may take. */
const OURS_MS = 50;
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

function ours({ problem }: Case): number {
  const begun = performance.now();
  const search = new ClothSearch(problem);
  while (performance.now() - begun < OURS_MS && search.improve(256));
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

/** Length that general packers need for the same pieces, by ours; and their time by ours. In fixed orientation. */
export async function cutVsPackers(): Promise<Figure[]> {
  const all = cases();
  for (const one of all) ours(one);
  let ourMs = 0;
  const lengths = all.map((one) => {
    let length = 0;
    ourMs += timed(() => {
      length = ours(one);
    });
    return length;
  });
  return [guillotinePacker(), await maxRects()].flatMap((packer) => {
    let ratios = 0;
    const ms = timed(() => {
      for (const [at, one] of all.entries()) ratios += theirs(packer, one) / (lengths[at] ?? 1);
    });
    const ratio = ratios / all.length;
    const peer = { peer: packer.name, better: "higher" as const, unit: "ratio" };
    return [
      { ...peer, name: `cut.vs-packers.${packer.name}.length`, value: ratio, ratio, goal: 1 },
      {
        ...peer,
        name: `cut.vs-packers.${packer.name}.time`,
        value: ms / ourMs,
        ratio: ms / ourMs,
        goal: 0.5,
      },
    ];
  });
}
