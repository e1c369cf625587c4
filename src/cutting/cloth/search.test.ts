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
