import { expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "../grid.ts";
import type { Bolt, ClothProblem } from "../problem.ts";
import { everyWay } from "./every-way.ts";

/** Sizes that fill no layer as they come. */
const sizesOf = (count: number, more: (n: number) => Partial<Sized> = () => ({})): Sized[] =>
  Array.from({ length: count }, (_, n) => ({
    size: [17 + ((n * 13) % 40), 21 + ((n * 29) % 50)],
    ...more(n),
  }));

const left: Partial<Bolt>[] = [{ lengthMm: 60, costPerMm: 0.5, widthMm: 60 }, {}];
const lots: Partial<Bolt>[] = [{ lengthMm: 120, lot: "x" }, { lot: "y" }];
const flaws = [{ xMm: 40, yMm: 30, widthMm: 10, lengthMm: 10 }];
const repeat: ClothProblem["repeat"] = { alongMm: 40, match: "straight" };

/**
 * What need not be looked at is left out: pieces laid and states gone on from, counted. The counts, and what comes out,
 * are our own of today: the test does no more than notice that more is looked at. What comes out is held against brute
 * force in `every-way.test.ts`.
 */
test.each<[string, ClothProblem, stages: number, laid: number, states: number, cost: number]>([
  ["plain cloth", givenCloth(sizesOf(8)), 2, 35, 20, 174],
  ["plain cloth", givenCloth(sizesOf(8)), 3, 1793, 18, 153],
  ["a leftover and new cloth", givenCloth(sizesOf(7), left), 2, 32, 22, 153],
  ["a leftover and new cloth", givenCloth(sizesOf(7), left), 3, 35, 15, 132],
  [
    "a repeat",
    givenCloth(
      sizesOf(5, (n) => ({ start: { alongMm: 10 * (n % 2) } })),
      [{}],
      { repeat },
    ),
    3,
    872,
    30,
    108,
  ],
  [
    "two lots",
    givenCloth(
      sizesOf(6, (n) => ({ lotGroup: n < 3 ? "g" : "h" })),
      lots,
    ),
    2,
    261,
    58,
    145,
  ],
  [
    "two lots",
    givenCloth(
      sizesOf(6, (n) => ({ lotGroup: n < 3 ? "g" : "h" })),
      lots,
    ),
    3,
    579,
    39,
    132,
  ],
  ["pieces that turn", givenCloth(sizesOf(6, () => ({ grain: "free", nap: "either" }))), 3, 2533, 12, 115],
  ["a flaw", givenCloth(sizesOf(6), [{ flaws }]), 2, 249, 41, 145],
  ["a flaw", givenCloth(sizesOf(6), [{ flaws }]), 3, 1561, 30, 132],
  ["equal pieces", givenCloth([...sizesOf(4), ...sizesOf(4)]), 3, 608, 5, 158],
])("%s: no more is looked at than today", (_, problem, stages, mostLaid, mostStates, cost) => {
  const grid = stepGridOf({ ...problem, cutting: { kind: "straight", stages } });
  const ways = everyWay(grid, stages, () => Number.POSITIVE_INFINITY);
  let laid = 0;
  let states = 0;
  let step = ways.next();
  for (; !step.done; step = ways.next()) {
    laid += step.value.nodes;
    states++;
  }
  expect(step.value.least).toBeCloseTo(cost, 6);
  expect(step.value.packing?.cost).toBeCloseTo(cost, 6);
  expect(laid).toBeLessThanOrEqual(mostLaid);
  expect(states).toBeLessThanOrEqual(mostStates);
});
