import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { anyCloth } from "../../../test/cutting/any-cloth.ts";
import { ClothSearch, solveCloth } from "./index.ts";

describe("any problem", () => {
  test("gives a plan that passes the check, or says why not", () => {
    fc.assert(
      fc.property(anyCloth, (problem) => {
        const answer = solveCloth(problem, 600);
        expect(answer.status === "withheld" ? answer.reasons : []).toEqual([]);
        if ("cost" in answer) expect(answer.bound.cost).toBeLessThanOrEqual(answer.cost * (1 + 1e-9));
      }),
      { numRuns: 200 },
    );
  });

  test("with pieces that nobody could cut so thin is laid out all the same", () => {
    // Found by drawing jobs: bands of a hundredth of a millimetre beside pieces that take the finest grid.
    const sizes = [
      [438.15, 189.7],
      [0.01, 113.5],
      [0.01, 113.5],
      [285.75, 0.01],
    ] as const;
    const pieces = sizes.map(([widthMm, lengthMm], n) => ({
      id: `p${n}`,
      shade: "any",
      part: "any",
      widthMm,
      lengthMm,
      grain: "fixed" as const,
      nap: "either" as const,
    }));
    const bolts = [{ id: "new", remnant: false, widthMm: 1371.6, flaws: [], costPerMm: 1 }];
    const keep = { widthMm: 300, lengthMm: 500 };
    const cutting = { kind: "straight" as const, stages: 3 };
    const answer = solveCloth({ id: "thin", bolts, pieces, gapMm: 0, cutting, keep, seed: 1 }, 60);
    expect(answer).toMatchObject({ cost: expect.closeTo(189.7, 1) });
  });

  test("is answered the same in one portion or in many", () => {
    fc.assert(
      fc.property(anyCloth, fc.integer({ min: 1, max: 400 }), (problem, portion) => {
        const once = new ClothSearch(problem);
        once.improve(900);
        const often = new ClothSearch(problem);
        const until = often.evaluations + 900;
        while (often.evaluations < until && often.improve(Math.min(portion, until - often.evaluations)));
        expect(often.answer()).toEqual(once.answer());
      }),
      { numRuns: 100 },
    );
  });
});
