import { describe, expect, test, vi } from "vitest";
import { givenCloth, type Sized } from "../../../../test/cutting/given-cloth.ts";
import { ClothSearch } from "../index.ts";
import type { Bolt, ClothAnswer, ClothCutPlan, ClothProblem, HeldPiece, Turn } from "../problem.ts";
import { verifyCloth } from "../verify.ts";
import { HeldSearch } from "./held-search.ts";

const NO_ROOM = "no place was found for the other pieces with it there";
const at = (pieceId: string, xMm: number, yMm: number, turn: Turn = 0, boltId = "b0"): HeldPiece => ({
  ...{ pieceId, boltId, xMm, yMm, turn },
});
function planOf(answer: ClothAnswer): ClothCutPlan {
  if (!("bolts" in answer)) throw new Error(JSON.stringify(answer));
  return answer;
}
/** Searches on, and checks what has to hold of every search round held pieces. */
function cutRound(problem: ClothProblem, held: readonly HeldPiece[], tries = 100): ClothCutPlan {
  const whole = { ...problem, held };
  const search = new HeldSearch(whole);
  const first = search.cost;
  const asked = search.evaluations;
  search.improve(tries);
  expect(search.evaluations).toBeGreaterThanOrEqual(asked);
  const plan = planOf(search.answer());
  expect(verifyCloth(whole, plan)).toEqual([]);
  expect(plan.cost).toBeCloseTo(search.cost, 9);
  expect(search.cost).toBeLessThanOrEqual(first);
  expect(plan.bound).toEqual(search.lowerBound);
  expect(plan.evaluations).toBe(search.evaluations);
  const isProved = plan.cost <= plan.bound.cost * (1 + 1e-9);
  expect(plan.status).toBe(isProved ? "optimal" : "feasible");
  expect(plan.gap).toBeCloseTo(plan.cost / plan.bound.cost - 1, 9);
  return plan;
}
const placesOf = (plan: ClothCutPlan) =>
  Object.fromEntries(
    plan.bolts.flatMap(({ boltId, placements }) =>
      placements.map(({ pieceId, xMm, yMm }) => [pieceId, [boltId, xMm, yMm]]),
    ),
  );

// By hand, on cloth of 100 mm at 1 a millimetre where nothing else is said.
describe("a plan round held pieces", () => {
  test("is proved the best where it costs what the areas do, with nothing left to look for", () => {
    const full = givenCloth([{ size: [60, 70] }, { size: [40, 30] }, { size: [40, 40] }]);
    const search = new HeldSearch({ ...full, held: [at("p0", 0, 0)] });
    expect([search.cost, search.lowerBound]).toEqual([70, { cost: 70, which: "area" }]);
    expect([search.done, search.improve(10)]).toEqual([true, false]);
    expect(planOf(search.answer("stopped"))).toMatchObject({ status: "optimal", gap: 0, cost: 70 });
  });

  test("that is not proved says so, by how much, and what became of the search", () => {
    // 40 × 20 in the middle of the cloth wastes what is beside it.
    const search = new HeldSearch({ ...givenCloth([{ size: [40, 20] }]), held: [at("p0", 30, 30)] });
    for (const status of ["feasible", "stopped"] as const) {
      // 20 is the least length that holds it, 50 what it takes from the bolt.
      expect(planOf(search.answer(status))).toMatchObject({
        status,
        cost: 50,
        bound: { cost: 20 },
        gap: 1.5,
      });
    }
    expect(search.answer()).toMatchObject({ status: "feasible" });
  });

  test("counts the plans tried for every band and on the way", () => {
    const sizes = [43, 37, 29, 31, 53, 23, 47, 27].map((w, n) => ({ size: [w, 30 + 7 * n] as const }));
    const search = new HeldSearch({
      ...givenCloth(sizes, [{}], { cutting: { kind: "straight", stages: 5 } }),
      held: [at("p0", 10, 30)],
    });
    const before = search.evaluations;
    expect(before).toBeGreaterThan(20);
    expect(search.done).toBe(false);
    expect(search.improve(60)).toBe(true);
    expect(search.evaluations).toBeGreaterThanOrEqual(before + 60);
    expect(search.evaluations).toBeLessThan(before + 260);
    let looks = 0;
    search.improve(1e6, () => ++looks > 3);
    expect(looks).toBe(4);
  });

  // By hand: the band of the first may end with any of four lengths of the others, or as it is. Each of these is filled in
  // four ways, two or one, and once nothing is filled; of many pieces two of the four lengths are tried.
  test.each([
    [10, 4 + 1 + 4 * 4],
    [11, 2 + 1 + 4 * 2],
    [100, 2 + 1 + 4 * 2],
    [101, 1 + 1 + 2 * 1],
  ])("of %d pieces tries %d first plans", (count, plans) => {
    const asked = vi.spyOn(ClothSearch.prototype, "answer");
    const sizes = Array.from({ length: count }, (_, n) => [100, n === 0 ? 10 : 11 + (n % 4)] as const);
    const search = new HeldSearch({
      ...givenCloth(sizes.map((size) => ({ size }))),
      held: [at("p0", 0, 0)],
    });
    expect(asked).toHaveBeenCalledTimes(plans);
    asked.mockRestore();
    expect(search.cost).toBe(sizes.reduce((sum, [, length]) => sum + length, 0));
  });

  test("lays others before, between, beside and behind, where that takes no more cloth", () => {
    // Whole widths before, between and behind two that are held.
    const wide = [20, 30, 15, 25, 10].map((long) => ({ size: [100, long] as const }));
    const plan = cutRound(givenCloth(wide), [at("p0", 0, 25), at("p1", 0, 60)]);
    expect(plan.cost).toBe(100);
    expect(placesOf(plan)).toEqual({
      p0: ["b0", 0, 25],
      p1: ["b0", 0, 60],
      p2: ["b0", 0, 45],
      p3: ["b0", 0, 0],
      p4: ["b0", 0, 90],
    });
    // With a gap of 2 they take it with them: 27 before the first, 17 between, 2 behind the second.
    const gaps = cutRound(givenCloth(wide, [{}], { gapMm: 2 }), [at("p0", 0, 27), at("p1", 0, 66)]);
    expect(gaps.cost).toBe(66 + 30 + 2 + 10);
    // A longer one beside two that are held in one run reaches over both.
    const long = [{ size: [30, 40] }, { size: [30, 40] }, { size: [70, 80] }] as const;
    expect(cutRound(givenCloth(long), [at("p0", 0, 0), at("p1", 0, 40)]).cost).toBe(80);
    // One that begins before what is held and ends with it, and one that begins with it and ends behind.
    expect(cutRound(givenCloth([{ size: [30, 40] }, { size: [70, 90] }]), [at("p0", 0, 50)]).cost).toBe(90);
    expect(cutRound(givenCloth([{ size: [30, 40] }, { size: [70, 90] }]), [at("p0", 0, 0)]).cost).toBe(90);
  });

  test("lets go of a held piece, the last first, where the others find no place with it", () => {
    const half = givenCloth([{ size: [100, 50] }, { size: [100, 50] }], [{ lengthMm: 100 }]);
    const letGo = cutRound(half, [at("p0", 0, 25)]);
    expect(letGo.notHeld).toEqual([{ pieceId: "p0", reason: NO_ROOM }]);
    expect(letGo.cost).toBe(100);
    // Each stretch of 30 holds one of 60 × 20, not a third; without it 40 and three of 20 are just 100. What was tried
    // with it there counts as well (`cutRound`).
    const tight = [{ size: [100, 40] }, ...[0, 1, 2].map(() => ({ size: [60, 20] as const }))] as Sized[];
    const tried = cutRound(givenCloth(tight, [{ lengthMm: 100 }]), [at("p0", 0, 30)]);
    expect(tried.notHeld).toEqual([{ pieceId: "p0", reason: NO_ROOM }]);
    // 20 and 40 held, 60 to be laid on 120: where the second lies there is no room for 60 in one piece.
    const three = givenCloth(
      [20, 40, 60].map((long) => ({ size: [100, long] })),
      [{ lengthMm: 120 }],
    );
    const one = cutRound(three, [at("p0", 0, 0), at("p1", 0, 50)]);
    expect(one.notHeld).toEqual([{ pieceId: "p1", reason: NO_ROOM }]);
    expect(placesOf(one).p0).toEqual(["b0", 0, 0]);
    const both = cutRound(three, [at("p1", 0, 50), at("p0", 0, 0)]);
    expect(both.notHeld?.map(({ pieceId }) => pieceId)).toEqual(["p0", "p1"]);
    expect(both.cost).toBe(120);
  });

  test("where nothing is held any more is that of the search without", () => {
    const sizes = [43, 37, 29, 31].map((w, n) => ({ size: [w, 30 + 7 * n] as const }));
    const problem = givenCloth(sizes, [{}], { cutting: { kind: "straight", stages: 5 } });
    const search = new HeldSearch({ ...problem, held: [at("p0", 90, 0)] });
    const free = new ClothSearch(problem);
    for (const tries of [0, 30]) {
      expect(search.improve(tries)).toBe(free.improve(tries));
      expect([search.cost, search.lowerBound, search.evaluations, search.done]).toEqual([
        free.cost,
        free.lowerBound,
        free.evaluations,
        free.done,
      ]);
      expect(search.answer("stopped")).toEqual({
        ...free.answer("stopped"),
        notHeld: [{ pieceId: "p0", reason: "p0 lies outside bolt b0" }],
      });
    }
    // Not even that finds a plan.
    const none = new HeldSearch({
      ...givenCloth([{ size: [100, 101] }], [{ lengthMm: 100 }]),
      held: [at("p0", 0, 0)],
    });
    expect(none.answer()).toEqual({
      status: "infeasible",
      reason: "larger than every bolt",
      pieceIds: ["p0"],
    });
    expect([none.cost, none.done]).toEqual([Number.POSITIVE_INFINITY, true]);
  });

  test("that does not pass the check is withheld, with the reasons", () => {
    const problem = { ...givenCloth([{ size: [60, 70] }, { size: [40, 30] }]), held: [at("p0", 0, 0)] };
    const search = new HeldSearch(problem);
    expect(search.answer()).toMatchObject({ status: "optimal" });
    // As if a piece had come out too narrow.
    Object.assign(problem.pieces[1] ?? {}, { widthMm: 50 });
    expect(search.answer()).toEqual({ status: "withheld", reasons: ["p1 is not cut to its size"] });
  });

  test("goes on where all pieces are held and says what they take", () => {
    const plan = cutRound(givenCloth([{ size: [60, 20] }, { size: [40, 30] }]), [
      at("p0", 0, 0),
      at("p1", 60, 0),
    ]);
    expect([plan.cost, plan.notHeld, placesOf(plan)]).toEqual([
      30,
      undefined,
      { p0: ["b0", 0, 0], p1: ["b0", 60, 0] },
    ]);
  });
});

describe("the dye lot of a held piece", () => {
  const group = (sizes: readonly (readonly [number, number])[]) =>
    sizes.map((size): Sized => ({ size, lotGroup: "g" }));
  // The held piece's lot is three times as dear.
  const boltsOf = (...lots: readonly Partial<Bolt>[]) => lots;
  const boltIds = (pieces: readonly Sized[], bolts: readonly Partial<Bolt>[], held: readonly HeldPiece[]) => {
    const plan = cutRound(givenCloth(pieces, bolts), held);
    expect(plan.notHeld).toBeUndefined();
    return Object.fromEntries(Object.entries(placesOf(plan)).map(([id, [bolt]]) => [id, bolt]));
  };
  const three = [
    [90, 30],
    [90, 30],
    [90, 30],
  ] as const;

  test("is that of the rest of its group, on another bolt of it too, and of no other piece", () => {
    const pieces = [...group(three), { size: [90, 10] } as Sized];
    const short = { lot: "y", lengthMm: 60 };
    const dear = boltsOf({ lot: "x", costPerMm: 3 }, short);
    expect(boltIds(pieces, dear, [at("p0", 0, 0)])).toEqual({ p0: "b0", p1: "b0", p2: "b0", p3: "b1" });
    const second = boltsOf({ lot: "x", costPerMm: 3, lengthMm: 90 }, short, { lot: "x", costPerMm: 2 });
    expect(boltIds(pieces, second, [at("p0", 0, 0)])).toEqual({ p0: "b0", p1: "b2", p2: "b2", p3: "b1" });
  });

  test("is the bolt itself where nobody says its lot, before and behind what is held", () => {
    const bolts = boltsOf({ costPerMm: 3 }, { lengthMm: 90 });
    // 30 are free before it, the other goes behind it.
    const where = cutRound(givenCloth(group(three), bolts), [at("p0", 0, 30)]);
    expect(placesOf(where)).toMatchObject({ p0: ["b0", 0, 30] });
    expect(where.bolts.map(({ boltId, usedMm }) => [boltId, usedMm])).toEqual([["b0", 90]]);
  });

  test("is that of the bolt it lies on, not of the first there is, called by a lot or by itself", () => {
    // All would cost less off the first bolt.
    for (const lots of [
      [{ lot: "x" }, { lot: "y" }],
      [{}, {}],
      [{ lot: "x" }, {}],
    ]) {
      const bolts = lots.map((lot, n) => ({
        ...lot,
        costPerMm: 1 + 2 * n,
        ...(n === 0 ? { lengthMm: 500 } : {}),
      }));
      const pieces = [...group(three), { size: [90, 10] } as Sized];
      expect(boltIds(pieces, bolts, [at("p0", 0, 0, 0, "b1")])).toEqual({
        p0: "b1",
        p1: "b1",
        p2: "b1",
        p3: "b0",
      });
    }
  });

  test("binds nobody where its whole group is held, and stands beside what is bound already", () => {
    const pieces = [...group([three[0]]), { size: [90, 10] } as Sized];
    expect(boltIds(pieces, boltsOf({ costPerMm: 3, lengthMm: 500 }, {}), [at("p0", 0, 0)])).toEqual({
      p0: "b0",
      p1: "b1",
    });
    const other: Sized = { size: [90, 20], lotGroup: "h" };
    const problem = givenCloth(
      [...group(three), other],
      [{ lot: "x" }, { lot: "y", costPerMm: 5, lengthMm: 60 }],
      {
        boundLots: { h: "y" },
      },
    );
    expect(placesOf(cutRound(problem, [at("p0", 0, 0)]))).toMatchObject({
      p1: ["b0", 0, 30],
      p3: ["b1", 0, 0],
    });
  });
});

describe("the repeat round a held piece", () => {
  test.each(["straight", "half-drop"] as const)("is matched by the widths joined to it (%s)", (match) => {
    const pieces = [0, 1, 2].map((index): Sized => ({ size: [90, 50], join: { group: "j", index } }));
    const problem = givenCloth(pieces, [{ rowMm: 10 }], { repeat: { alongMm: 64, match } });
    // The check compares the tops; each of the others begins less than a repeat behind the piece before it.
    const plan = cutRound(problem, [at("p1", 0, 27)]);
    expect(plan.notHeld).toBeUndefined();
    expect(plan.cost).toBeLessThanOrEqual(27 + 3 * 50 + 2 * 64);
  });

  test("runs on before and behind it: a piece with its own place in it finds one on either side", () => {
    const pieces = [{ size: [90, 40] }, { size: [90, 30] }, { size: [90, 30] }].map(
      ({ size: [w, h] = [] }, n): Sized => ({
        size: [w ?? 0, h ?? 0],
        ...(n === 0 ? {} : { start: { alongMm: 20 } }),
      }),
    );
    const problem = givenCloth(pieces, [{ rowMm: 10 }], { repeat: { alongMm: 60, match: "straight" } });
    // Starts at 30, 90, 150, …: one before what is held at 70, the other behind it at 150.
    const plan = cutRound(problem, [at("p0", 0, 70)]);
    expect([placesOf(plan).p1?.[2], placesOf(plan).p2?.[2]].toSorted()).toEqual([150, 30]);
    expect(plan.cost).toBe(180);
  });
});
