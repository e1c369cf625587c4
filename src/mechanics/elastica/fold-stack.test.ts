import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { rigidityNmm, weightNPerMm2 } from "../bending/rigidity.ts";
import { dropFamily } from "./drop-family.ts";
import { type FoldStack, type FoldStackProblem, stackFolds } from "./fold-stack.ts";

const stackOf = (count: number, change: Partial<FoldStackProblem> = {}, bending = 23): FoldStackProblem => ({
  arcsMm: Array.from({ length: count }, () => 200),
  weightNPerMm2: weightNPerMm2(370),
  rigidityNmm: rigidityNmm(370, bending),
  thicknessMm: 0.8,
  skirt: { lengthMm: 100, weightNPerMm: 0.0048, centreMm: 92 },
  ...change,
});

const stacked = stackFolds;

describe("gathered folds in front of each other", () => {
  test("each plane passes on the moment of the weight in front of it; the skirt holds the whole", () => {
    const problem = stackOf(6);
    const stack = stacked(problem);
    const { planesRad, momentsN, halvesRad } = stack;
    const pull = problem.weightNPerMm2 * 200 * 0.485 * 100;
    const thick = Math.atan(0.8 / 87);
    for (let k = 0; k < 6; k++) {
      const axis = (planesRad[k] ?? 0) + (halvesRad[k] ?? 0) + thick;
      expectNear((momentsN[k] ?? 0) - (momentsN[k + 1] ?? 0), pull * Math.sin(axis), 1e-6);
    }
    expectNear(momentsN[6] ?? 1, 0, 1e-5 * pull);
    const { weightNPerMm, centreMm } = problem.skirt;
    expectNear(weightNPerMm * centreMm * Math.tan(-(planesRad[0] ?? 0)), momentsN[0] ?? 0, 1e-9);
  });

  test("each drop is as tight as its moments make it", () => {
    const problem = stackOf(5);
    const { halvesRad, momentsN } = stacked(problem);
    const family = dropFamily((problem.weightNPerMm2 * 1e6) / problem.rigidityNmm);
    halvesRad.forEach((half, k) => {
      const mean = ((momentsN[k] ?? 0) + (momentsN[k + 1] ?? 0)) / 2;
      expectNear(half, family.halfRad((mean * 100) / problem.rigidityNmm), 1e-3 * half);
    });
  });

  test("a pane behind stops the skirt and moves the folds forward", () => {
    const [free, held] = [stacked(stackOf(8)), stacked(stackOf(8, { paneMm: 8 }))];
    expect(free.behindMm).toBeGreaterThan(8);
    expectNear(held.behindMm, 8, 1e-9);
    expect(held.frontMm).toBeGreaterThan(free.frontMm);
  });

  test("no folds: the skirt hangs straight", () => {
    const stack = stacked(stackOf(0));
    expectNear(stack.frontMm, 0, 1e-12);
    expectNear(stack.planesRad[0] ?? 1, 0, 1e-12);
    expect(stack.bottomMm).toBe(100);
  });

  const bending = fc.double({ min: 10, max: 30, noNaN: true });
  test("stiffer or thicker cloth never takes less room; each fold more takes more of it until the front one stands level", () => {
    fc.assert(
      fc.property(
        bending,
        fc.integer({ min: 1, max: 5 }),
        fc.double({ min: 1.05, max: 1.4, noNaN: true }),
        (c, n, more) => {
          const span = ({ planesRad }: FoldStack) => (planesRad.at(-1) ?? 0) - (planesRad[0] ?? 0);
          const plain = stacked(stackOf(n, {}, c));
          expect(span(stacked(stackOf(n, {}, c * more)))).toBeGreaterThan(span(plain));
          expect(span(stacked(stackOf(n, { thicknessMm: 0.8 * more }, c)))).toBeGreaterThan(span(plain));
          const next = stacked(stackOf(n + 1, {}, c));
          expect(span(next)).toBeGreaterThan(span(plain));
          if ((next.planesRad.at(-1) ?? 0) < Math.PI / 2) expect(next.frontMm).toBeGreaterThan(plain.frontMm);
        },
      ),
      { numRuns: 60 },
    );
  });

  test("scale: everything twice as large and as thick, the stack is", () => {
    const small = stackOf(4);
    const large: FoldStackProblem = {
      ...small,
      arcsMm: small.arcsMm.map((arc) => 2 * arc),
      rigidityNmm: small.rigidityNmm * 8,
      thicknessMm: 1.6,
      skirt: { lengthMm: 200, weightNPerMm: 0.0096, centreMm: 184 },
    };
    expectNear(stacked(large).frontMm, 2 * stacked(small).frontMm, 1e-4);
  });
});
