import fc from "fast-check";
import { expect, test } from "vitest";
import { type ClothProblem, ClothSearch, type Piece } from "../../src/cutting/index.ts";
import { cheaperByBruteForce } from "./lay-by-brute-force.ts";

const tens = (min: number, max: number) => fc.integer({ min, max }).map((n) => 10 * n);

const piece: fc.Arbitrary<Omit<Piece, "id">> = fc.record(
  {
    shade: fc.constant("s"),
    part: fc.constant("face"),
    widthMm: tens(1, 6),
    lengthMm: tens(1, 6),
    grain: fc.constantFrom("fixed" as const, "free" as const),
    nap: fc.constant("either" as const),
    start: fc.record({ alongMm: tens(0, 3), acrossMm: tens(0, 1) }),
    lotGroup: fc.constant("g"),
  },
  { requiredKeys: ["shade", "part", "widthMm", "lengthMm", "grain", "nap", "start"] },
);

const leftover = fc.record({
  widthMm: tens(3, 6),
  lengthMm: tens(3, 9),
  costPerMm: fc.constantFrom(0.01, 0.5),
  flaws: fc.array(
    fc.record({ xMm: fc.constant(0), yMm: tens(0, 6), widthMm: fc.constant(60), lengthMm: tens(1, 1) }),
    { maxLength: 1 },
  ),
});

function problemOf(
  pieces: Omit<Piece, "id">[],
  left: {
    widthMm: number;
    lengthMm: number;
    costPerMm: number;
    flaws: ClothProblem["bolts"][number]["flaws"];
  }[],
  stages: number,
  repeat?: ClothProblem["repeat"],
): ClothProblem {
  return {
    id: "few",
    bolts: [
      ...left.map((one, at) => ({ ...one, id: `left${at}`, remnant: true })),
      { id: "new", remnant: false, widthMm: 60, flaws: [], costPerMm: 1 },
    ],
    // Without a place across, a piece may lie anywhere beside the pattern.
    pieces: pieces.map((one, at) => ({ ...one, id: `p${at}` })),
    gapMm: 0,
    cutting: { kind: "straight", stages },
    keep: { widthMm: 1000, lengthMm: 1000 },
    seed: 1,
    ...(repeat ? { repeat } : {}),
  };
}

function proves(problem: ClothProblem): void {
  const search = new ClothSearch(problem);
  search.improve(20_000);
  const answer = search.answer();
  if ("cost" in answer) expect(answer.status).toBe("optimal");
  const cost = "cost" in answer ? answer.cost : 1e6;
  expect(cheaperByBruteForce(problem, cost - 1e-6), JSON.stringify(answer)).toBeUndefined();
}

test("what is proved of a few pieces is what brute force finds, leftovers, flaws and dye lots among them", () => {
  fc.assert(
    fc.property(
      fc.array(piece, { minLength: 1, maxLength: 3 }),
      fc.array(leftover, { maxLength: 1 }),
      fc.constantFrom(2, 3),
      (pieces, left, stages) => proves(problemOf(pieces, left, stages)),
    ),
    { numRuns: 40 },
  );
});

test("the same where what is cut already binds the rest to its dye lot", () => {
  fc.assert(
    fc.property(
      fc.array(piece, { minLength: 1, maxLength: 2 }),
      leftover,
      fc.constantFrom(2, 3),
      fc.constantFrom("left", "new"),
      (pieces, left, stages, lot) => {
        const problem = problemOf(pieces, [left], stages);
        const bolts = problem.bolts.map((bolt) => ({ ...bolt, lot: bolt.remnant ? "left" : "new" }));
        proves({ ...problem, bolts, boundLots: { g: lot } });
      },
    ),
    { numRuns: 30 },
  );
});

test("the same of four pieces on one bolt", () => {
  fc.assert(
    fc.property(
      fc.array(
        piece.map((one) => ({ ...one, lengthMm: Math.min(30, one.lengthMm), grain: "fixed" as const })),
        { minLength: 4, maxLength: 4 },
      ),
      fc.constantFrom(2, 3),
      (pieces, stages) => proves(problemOf(pieces, [], stages)),
    ),
    { numRuns: 15 },
  );
});

test("the same on a repeat, in columns and in half drop", () => {
  const repeat = fc.record(
    {
      alongMm: fc.constantFrom(40, 60),
      acrossMm: fc.constantFrom(20, 30),
      match: fc.constantFrom("straight" as const, "half-drop" as const),
    },
    { requiredKeys: ["alongMm", "acrossMm", "match"] },
  );
  fc.assert(
    fc.property(
      fc.array(piece, { minLength: 1, maxLength: 3 }),
      fc.array(leftover, { maxLength: 1 }),
      fc.constantFrom(2, 3),
      repeat,
      (pieces, left, stages, print) => proves(problemOf(pieces, left, stages, print)),
    ),
    { numRuns: 40 },
  );
});
