import fc from "fast-check";
import { expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../../test/cutting/given-cloth.ts";
import { cheaperByBruteForce } from "../../../../test/cutting/lay-by-brute-force.ts";
import { verifyCloth } from "../verify.ts";
import { HeldSearch } from "./held-search.ts";

test("a plan round held pieces costs hardly more than the best way round them, found by trying every place", () => {
  const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => 10 * n);
  const sized = fc.record({ widthMm: cm(2, 9), lengthMm: cm(2, 9) });
  const cases = fc.sample(fc.tuple(fc.array(sized, { minLength: 2, maxLength: 3 }), fc.nat(4), fc.nat(6)), {
    numRuns: 25,
    seed: 20261201,
  });
  const extra = cases.flatMap(([sizes, x, y]) => {
    const [first] = sizes;
    if (first === undefined || 10 * x + first.widthMm > 100) return [];
    const pieces = sizes.map(({ widthMm, lengthMm }): Sized => ({ size: [widthMm, lengthMm] }));
    const problem = givenCloth(pieces, [{ lengthMm: 300 }]);
    const held = [{ pieceId: "p0", boltId: "b0", xMm: 10 * x, yMm: 10 * y, turn: 0 as const }];
    const search = new HeldSearch({ ...problem, held });
    search.improve(100);
    const plan = search.answer();
    if (!("bolts" in plan)) throw new Error(JSON.stringify(plan));
    expect(verifyCloth({ ...problem, held }, plan)).toEqual([]);
    expect(plan.notHeld).toBeUndefined();
    const mayLie = (id: string, xMm: number, yMm: number) =>
      id !== "p0" || (xMm === 10 * x && yMm === 10 * y);
    return [plan.cost / (cheaperByBruteForce(problem, plan.cost, mayLie) ?? plan.cost) - 1];
  });
  expect(extra.length).toBeGreaterThan(12);
  // Bands are one way to lay pieces of several: most of these are the best there is, and none is far from it.
  expect(extra.filter((share) => share > 1e-9).length).toBeLessThanOrEqual(0.1 * extra.length);
  expect(Math.max(...extra)).toBeLessThan(0.35);
});
