import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type ClothCutPlan,
  type ClothProblem,
  type HeldPiece,
  solveCloth,
  startClothSearch,
  verifyCloth,
} from "../../src/cutting/index.ts";
import { anyCloth } from "./any-cloth.ts";
import { cheaperByBruteForce } from "./lay-by-brute-force.ts";

const TRIES = 400;

function cutRound(problem: ClothProblem, held: readonly HeldPiece[]) {
  const search = startClothSearch({ ...problem, held });
  search.improve(TRIES);
  return search.answer();
}

/** Some pieces of a plan, held where they lie or moved a little. */
function heldOf(plan: ClothCutPlan, picks: readonly { at: number; xMm: number; yMm: number }[]): HeldPiece[] {
  const all = plan.bolts.flatMap(({ boltId, placements }) => placements.map((one) => ({ boltId, ...one })));
  const chosen = new Map(
    picks.map(({ at, xMm, yMm }) => {
      const one = all[at % all.length] as (typeof all)[number];
      const held: HeldPiece = {
        pieceId: one.pieceId,
        boltId: one.boltId,
        xMm: one.xMm + xMm,
        yMm: Math.max(0, one.yMm + yMm),
        turn: one.turn,
      };
      return [one.pieceId, held];
    }),
  );
  return [...chosen.values()];
}

const still = fc.record({ at: fc.nat(60), xMm: fc.constant(0), yMm: fc.constant(0) });
const moved = fc.record({
  at: fc.nat(60),
  xMm: fc.integer({ min: -300, max: 300 }),
  yMm: fc.integer({ min: -300, max: 900 }),
});

function smallProblem(sizes: readonly { widthMm: number; lengthMm: number }[]): ClothProblem {
  return {
    id: "small",
    bolts: [{ id: "b", remnant: false, widthMm: 120, lengthMm: 300, flaws: [], costPerMm: 1 }],
    pieces: sizes.map((one, at) => ({
      ...one,
      id: `p${at}`,
      shade: "s",
      part: "face",
      grain: "fixed",
      nap: "one-way",
    })),
    gapMm: 0,
    cutting: { kind: "straight", stages: 3 },
    keep: { widthMm: 10, lengthMm: 10 },
    seed: 1,
  };
}

describe("a piece that somebody has laid", () => {
  test("stays where it lies, the rest is cut round it, and the plan passes the check", () => {
    fc.assert(
      fc.property(
        anyCloth,
        fc.array(fc.oneof(still, moved), { minLength: 1, maxLength: 4 }),
        (problem, picks) => {
          const free = solveCloth(problem, 100);
          fc.pre("bolts" in free && free.bolts.length > 0);
          const held = heldOf(free as ClothCutPlan, picks);
          const answer = cutRound(problem, held);
          expect(answer.status === "withheld" ? answer.reasons : []).toEqual([]);
          if (!("bolts" in answer)) return;
          expect(verifyCloth({ ...problem, held }, answer)).toEqual([]);
          expect(answer.bound.cost).toBeLessThanOrEqual(answer.cost * (1 + 1e-9));
        },
      ),
      { numRuns: 40 },
    );
  });

  test("that lies where a plan had it is always held, where there is new cloth for the rest", () => {
    fc.assert(
      fc.property(anyCloth, fc.array(still, { minLength: 1, maxLength: 3 }), (problem, picks) => {
        const { repeat: _, tableMm: __, ...plain } = problem;
        const wide = {
          ...plain,
          cutting: { kind: "straight" as const, stages: 3 },
          bolts: [{ id: "new", remnant: false, widthMm: 1600, flaws: [], costPerMm: 1 }],
        };
        const free = solveCloth(wide, TRIES);
        fc.pre("bolts" in free && free.bolts.length > 0);
        const answer = cutRound(wide, heldOf(free as ClothCutPlan, picks));
        if (!("bolts" in answer)) throw new Error(answer.status);
        expect(answer.notHeld).toBeUndefined();
      }),
      { numRuns: 30 },
    );
  });

  test("costs hardly more cloth than the best way round it, found by trying every place", () => {
    const size = fc.integer({ min: 2, max: 9 }).map((cm) => cm * 10);
    const small = fc.array(fc.record({ widthMm: size, lengthMm: size }), { minLength: 2, maxLength: 3 });
    const cases = fc.sample(fc.tuple(small, fc.nat(4), fc.nat(6)), { numRuns: 150, seed: 20261130 });
    const extra = cases.flatMap(([sizes, x, y]) => {
      const problem = smallProblem(sizes);
      const held: HeldPiece = { pieceId: "p0", boltId: "b", xMm: 10 * x, yMm: 10 * y, turn: 0 };
      if (held.xMm + (sizes[0]?.widthMm ?? 0) > 120) return [];
      const answer = cutRound(problem, [held]);
      if (!("bolts" in answer)) throw new Error(answer.status);
      const mayLie = (pieceId: string, xMm: number, yMm: number) =>
        pieceId !== "p0" || (xMm === held.xMm && yMm === held.yMm);
      return [answer.cost / (cheaperByBruteForce(problem, answer.cost, mayLie) ?? answer.cost) - 1];
    });
    expect(extra.filter((share) => share > 0).length).toBeLessThanOrEqual(0.1 * extra.length);
    expect(extra.reduce((sum, share) => sum + share, 0) / extra.length).toBeLessThan(0.02);
  });

  test("that lies on a flaw, off its row, or nowhere is let go, and the plan says why", () => {
    const problem: ClothProblem = {
      id: "one",
      bolts: [
        {
          id: "b",
          remnant: false,
          widthMm: 1400,
          flaws: [{ xMm: 0, yMm: 500, widthMm: 1400, lengthMm: 20 }],
          costPerMm: 1,
        },
      ],
      pieces: ["p", "q"].map((id) => ({
        id,
        shade: "s",
        part: id,
        widthMm: 600,
        lengthMm: 900,
        grain: "fixed",
        nap: "one-way",
        start: { alongMm: 0 },
      })),
      repeat: { alongMm: 640, match: "straight" },
      gapMm: 0,
      cutting: { kind: "straight", stages: 3 },
      keep: { widthMm: 100, lengthMm: 200 },
      seed: 1,
    };
    const at = (pieceId: string, yMm: number) => ({ pieceId, boltId: "b", xMm: 0, yMm, turn: 0 as const });
    const reasons = (held: HeldPiece[]) => {
      const answer = cutRound(problem, held);
      if (!("bolts" in answer)) throw new Error(answer.status);
      return (answer.notHeld ?? []).map(({ reason }) => reason);
    };
    expect(reasons([at("p", 640)])).toEqual([]);
    expect(reasons([at("p", 1280)])).toEqual([]);
    expect(reasons([at("p", 0)])).toEqual(["p lies on a flaw of bolt b"]);
    expect(reasons([at("p", 700)])).toEqual(["p lies 60.0 mm from its row of the repeat"]);
    expect(reasons([at("gone", 640)])).toEqual(["there is no such piece, or no such bolt any more"]);
    expect(reasons([at("p", 640), at("q", 1280)])).toEqual(["p and q lie too close on bolt b"]);
  });
});
