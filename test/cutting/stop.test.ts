import { afterEach, describe, expect, test, vi } from "vitest";
import { clothJob } from "../../bench/cloth-jobs.ts";
import { BoxDecoder } from "../../src/cutting/cloth/box-decoder.ts";
import { type ClothProblem, startClothSearch, verifyCloth } from "../../src/cutting/cloth/index.ts";
import { LayerDecoder } from "../../src/cutting/cloth/layer-decoder.ts";
import { LayerPrices } from "../../src/cutting/cloth/layer-prices.ts";
import { PatternLp } from "../../src/cutting/lengths/pattern-lp.ts";

/** One job for each phase of the search: every way, layers by columns and groups, the repeat, remnants with flaws, held pieces. */
const JOBS: Record<string, ClothProblem> = {
  "few pieces": clothJob({ seed: 11, pieces: 9, each: 1 }),
  "many equal pieces": clothJob({ seed: 3, pieces: 300, each: 6 }),
  "more pieces, all different": clothJob({ seed: 4, pieces: 150, each: 1 }),
  "a half drop": halfDrop(clothJob({ seed: 5, pieces: 40, each: 2, repeatMm: 640 })),
  "any number of stages": { ...clothJob({ seed: 6, pieces: 30, each: 2 }), cutting: { kind: "straight" } },
  "remnants with flaws": flawed(clothJob({ seed: 7, pieces: 40, each: 2 })),
  "a held piece": held(clothJob({ seed: 8, pieces: 12, each: 2 })),
};

function halfDrop(job: ClothProblem): ClothProblem {
  return {
    ...job,
    repeat: { alongMm: 640, acrossMm: 300, match: "half-drop" },
    pieces: job.pieces.map((piece, n) => ({ ...piece, start: { alongMm: 0, acrossMm: 100 * (n % 3) } })),
  };
}

function flawed(job: ClothProblem): ClothProblem {
  const flaw = { xMm: 400, yMm: 900, widthMm: 60, lengthMm: 60 };
  const remnant = {
    id: "left",
    remnant: true,
    widthMm: 1300,
    lengthMm: 6000,
    flaws: [flaw],
    costPerMm: 0.01,
  };
  return { ...job, bolts: [remnant, ...job.bolts] };
}

function held(job: ClothProblem): ClothProblem {
  const [piece] = job.pieces;
  return { ...job, held: [{ pieceId: piece?.id ?? "", boltId: "bolt", xMm: 100, yMm: 1500, turn: 0 }] };
}

/** Counts what takes time: pieces laid, layers priced, columns of the linear programme looked at. */
function countWork(): () => number {
  let work = 0;
  const counted = <T extends object>(of: T, name: keyof T & string, weight: (self: never) => number) => {
    const own = of[name] as (...args: unknown[]) => unknown;
    vi.spyOn(of as Record<string, (...args: unknown[]) => unknown>, name).mockImplementation(function (
      this: unknown,
      ...args: unknown[]
    ) {
      work += weight(this as never);
      return own.apply(this, args);
    });
  };
  counted(LayerDecoder.prototype, "lay", ({ masks }: LayerDecoder) => masks.count);
  counted(BoxDecoder.prototype, "lay", ({ masks }: BoxDecoder) => masks.count);
  counted(LayerPrices.prototype, "best", () => 50);
  counted(PatternLp.prototype, "reducedCost", () => 0.1);
  return () => work;
}

afterEach(() => {
  vi.restoreAllMocks();
});

/** Pieces laid between two looks, or as much other work: some hundredths of a second. */
const MOST_WORK = 40_000;

describe.each(Object.entries(JOBS))("%s", (_name, problem) => {
  test("the search looks whether it is to stop, in every phase", () => {
    const work = countWork();
    const search = startClothSearch(problem);
    let before = work();
    let most = 0;
    let looks = 0;
    search.improve(6000, () => {
      most = Math.max(most, work() - before);
      before = work();
      looks++;
      return false;
    });
    most = Math.max(most, work() - before);
    expect(most).toBeLessThanOrEqual(MOST_WORK);
    expect(looks).toBeGreaterThan(search.done ? 0 : 100);
  });

  test.each([0, 1, 2, 5, 20, 100, 400])("does nothing more once it is told to, after %d looks", (looks) => {
    const work = countWork();
    const search = startClothSearch(problem);
    let asked = 0;
    let atStop: number | undefined;
    search.improve(Number.POSITIVE_INFINITY, () => {
      expect(atStop).toBeUndefined();
      if (asked++ < looks) return false;
      atStop = work();
      return true;
    });
    if (!search.done) expect(work()).toBe(atStop);
    const answer = search.answer("stopped");
    if (!("bolts" in answer)) throw new Error(`no plan: ${answer.status}`);
    expect(verifyCloth(problem, answer)).toEqual([]);
  });
});
