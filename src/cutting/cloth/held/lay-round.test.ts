import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { givenCloth, type Sized } from "../../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "../grid.ts";
import type { Bolt, ClothProblem, HeldPiece, Placement, Rect } from "../problem.ts";
import { type BandChoice, type FreeFill, layRound, type Round } from "./lay-round.ts";
import { placeHeld } from "./place-held.ts";

const FILLS: readonly (FreeFill | undefined)[] = [
  undefined,
  { first: "narrow", aim: "full" },
  { first: "large", aim: "dense" },
];
const at = (pieceId: string, xMm: number, yMm: number, boltId = "b0"): HeldPiece => ({
  ...{ pieceId, boltId, xMm, yMm, turn: 0 },
});

function roundOf(problem: ClothProblem, held: readonly HeldPiece[], choice: BandChoice): Round {
  const grid = stepGridOf(problem);
  const { laid, notHeld } = placeHeld({ ...problem, held }, grid);
  expect(notHeld).toEqual([]);
  return layRound(problem, grid, laid, choice);
}
/** Where parts begin and how long they are, mm. */
const partsOf = ({ rest, parts }: Round) =>
  rest.bolts.map(({ id, lengthMm }) => [parts.get(id)?.boltId ?? id, parts.get(id)?.fromMm, lengthMm]);
const spotsOf = ({ laid }: Round) =>
  laid.map(({ placement: { pieceId, xMm, yMm, turn } }) => [pieceId, xMm, yMm, turn]);

/** Whether two rectangles come nearer than the gap, by their middles and sizes. */
function isNear(a: Rect, b: Rect, gapMm: number): boolean {
  const near = (from: number, size: number, other: number, otherSize: number) =>
    Math.abs(from + size / 2 - other - otherSize / 2) < (size + otherSize) / 2 + gapMm - 1e-6;
  return near(a.xMm, a.widthMm, b.xMm, b.widthMm) && near(a.yMm, a.lengthMm, b.yMm, b.lengthMm);
}

describe("cloth round held pieces", () => {
  const cm = (min: number, max: number) => fc.integer({ min, max }).map((n) => 10 * n);
  const sized = fc.record({ w: cm(1, 7), h: cm(1, 7), isFree: fc.boolean() });
  const anyCase = fc.record({
    sizes: fc.array(sized, { minLength: 1, maxLength: 8 }),
    spots: fc.array(fc.record({ xMm: cm(0, 9), yMm: cm(0, 15), bolt: fc.nat(1) }), {
      minLength: 1,
      maxLength: 3,
    }),
    gapMm: fc.constantFrom(0, 0, 3),
    lengthMm: fc.option(cm(12, 25), { nil: undefined }),
    flawMm: fc.option(fc.record({ xMm: cm(0, 9), yMm: cm(0, 25) }), { nil: undefined }),
    fill: fc.constantFrom(...FILLS),
    reach: fc.nat(20),
  });

  test("is cut into bands and parts that meet nowhere, and every piece is either laid or left to be cut", () => {
    fc.assert(
      fc.property(fc.array(anyCase, { minLength: 4, maxLength: 4 }), (cases) => {
        for (const { sizes, spots, gapMm, lengthMm, flawMm, fill, reach } of cases) {
          const flaws = flawMm ? [{ ...flawMm, widthMm: 10, lengthMm: 10 }] : [];
          const long = lengthMm === undefined ? {} : { lengthMm };
          const problem = givenCloth(
            sizes.map(({ w, h, isFree }): Sized => {
              return { size: [w, h], ...(isFree ? { grain: "free", nap: "either" } : {}) };
            }),
            [{ ...long, flaws, costPerMm: 2, rowMm: 7 }, { lot: "x" }],
            { gapMm },
          );
          const grid = stepGridOf(problem);
          const held = spots.map(({ xMm, yMm, bolt }, n) => at(`p${n}`, xMm, yMm, `b${bolt}`));
          const { laid: kept } = placeHeld({ ...problem, held }, grid);
          const tries = layRound(problem, grid, kept, { reaches: [] }).otherReaches;
          const heldMm = kept.map(({ placement }) => placement);
          // A longer band may meet the next; that is found out when the plan is checked. Here it is alone.
          const longer = tries[0]?.[reach % tries[0].length];
          const reaches = tries.length === 1 && longer ? [longer] : [];
          const round = layRound(problem, grid, kept, { reaches, ...(fill ? { fill } : {}) });
          // The held ones first, as they lie.
          expect(round.laid.slice(0, kept.length)).toEqual(kept);
          if (!fill) expect(round.laid.length).toBe(kept.length);
          const ids = [
            ...round.laid.map((one) => one.placement.pieceId),
            ...round.rest.pieces.map((p) => p.id),
          ];
          expect(ids.toSorted()).toEqual(problem.pieces.map(({ id }) => id).toSorted());
          for (const bolt of problem.bolts) expectApart(problem, bolt, round, heldMm);
        }
      }),
      { numRuns: 15 },
    );
  });

  function expectApart(
    { pieces, gapMm }: ClothProblem,
    bolt: Bolt,
    { laid, rest, parts }: Round,
    held: readonly Placement[],
  ) {
    const own = laid.filter(({ boltId }) => boltId === bolt.id).map(({ placement }) => placement);
    const ofBolt = rest.bolts.filter(({ id }) => (parts.get(id)?.boltId ?? id) === bolt.id);
    if (own.length === 0) {
      // A bolt on which nothing is held is as it was.
      expect(ofBolt).toEqual([bolt]);
      return;
    }
    own.forEach((one, n) => {
      const piece = pieces.find(({ id }) => id === one.pieceId);
      const size = [piece?.widthMm, piece?.lengthMm];
      expect([one.widthMm, one.lengthMm]).toEqual(one.turn === 90 ? size.toReversed() : size);
      expect(one.turn === 0 || piece?.grain === "free").toBe(true);
      expect(one.xMm >= 0 && one.xMm + one.widthMm <= bolt.widthMm && one.yMm >= 0).toBe(true);
      expect(one.yMm + one.lengthMm).toBeLessThanOrEqual(bolt.lengthMm ?? Number.POSITIVE_INFINITY);
      for (const other of own.slice(n + 1)) expect(isNear(one, other, gapMm)).toBe(false);
      if (!held.includes(one)) for (const flaw of bolt.flaws) expect(isNear(one, flaw, 0)).toBe(false);
    });
    let fromMm = 0;
    const behindMm = Math.max(
      ...held.filter((one) => own.includes(one)).map((one) => one.yMm + one.lengthMm),
    );
    ofBolt.forEach((part) => {
      const { fromMm: start = -1 } = parts.get(part.id) ?? {};
      const { lengthMm: long = Number.POSITIVE_INFINITY } = part;
      expect(start).toBeGreaterThanOrEqual(fromMm);
      expect(long).toBeGreaterThan(0);
      expect(part.widthMm).toBe(bolt.widthMm);
      const cloth = { xMm: 0, widthMm: bolt.widthMm, yMm: start, lengthMm: Math.min(long, 1e4) };
      for (const one of own) expect(isNear(one, cloth, gapMm)).toBe(false);
      const isLast = start >= behindMm;
      if (isLast) {
        // It goes on to the end of the bolt.
        expect(part.costPerMm).toBe(bolt.costPerMm);
        if (bolt.lengthMm === undefined) expect(part.lengthMm).toBeUndefined();
        else expect(start + long).toBeCloseTo(bolt.lengthMm, 9);
      } else {
        // What lies before held pieces is taken off the bolt anyhow.
        expect(part.costPerMm).toBeGreaterThan(0);
        expect(part.costPerMm).toBeLessThan(0.01 * bolt.costPerMm);
      }
      expect(part.lot).toBe(bolt.lot ?? `bolt ${bolt.id}`);
      // Flaws and rows lie where they lay on the bolt; a flaw before the part is none of it.
      expect((part.rowMm ?? 0) + start).toBeCloseTo(bolt.rowMm ?? 0, 9);
      expect(part.flaws.map(({ yMm, ...flaw }) => ({ ...flaw, yMm: yMm + start }))).toEqual(
        bolt.flaws.filter(({ yMm, lengthMm }) => yMm + lengthMm > start),
      );
      fromMm = start + long;
    });
  }

  // By hand: cloth of 100 mm with a gap of 2, in tenths of a millimetre. 40 × 30 is held at 50.
  const pieces = [{ size: [40, 30] }, { size: [60, 20] }, { size: [30, 60] }] as const;
  const problem = givenCloth(pieces, [{}], { gapMm: 2 });

  test("lies before, in and behind its band; one band may begin or end where another piece beside it does", () => {
    const round = roundOf(problem, [at("p0", 0, 50)], { reaches: [] });
    // The band takes the gap behind the held piece; the part before it ends a gap before it.
    expect(partsOf(round)).toEqual([
      ["b0", 0, 48],
      ["b0", 82, undefined],
    ]);
    // With its gap p1 is 22 long, p2 62: from 50 p2 ends at 112; to 82 p1 begins at 60, p2 at 20; and all that is
    // free before it may belong to it.
    expect(round.otherReaches).toEqual([
      [
        { from: 500, to: 1120 },
        { from: 0, to: 820 },
        { from: 200, to: 820 },
      ],
    ]);
    const longer = roundOf(problem, [at("p0", 0, 50)], { reaches: [{ from: 200, to: 820 }] });
    expect(partsOf(longer)).toEqual([
      ["b0", 0, 18],
      ["b0", 82, undefined],
    ]);
    const beyond = roundOf(problem, [at("p0", 0, 50)], { reaches: [{ from: 500, to: 1120 }] });
    expect(partsOf(beyond)).toEqual([
      ["b0", 0, 48],
      ["b0", 112, undefined],
    ]);
  });

  test("is never shorter than what is held, nor longer than the bolt", () => {
    const bolts = [{ lengthMm: 120 }];
    const reach = (from: number, to: number) =>
      partsOf(
        roundOf(givenCloth(pieces, bolts, { gapMm: 2 }), [at("p0", 0, 50)], { reaches: [{ from, to }] }),
      );
    expect(reach(-100, 0)).toEqual([["b0", 82, 38]]);
    expect(reach(700, 820)).toEqual([
      ["b0", 0, 48],
      ["b0", 82, 38],
    ]);
    expect(reach(500, 5000)).toEqual([["b0", 0, 48]]);
    // A gap and no more is left behind it: nothing to cut from.
    expect(reach(500, 1200)).toEqual([["b0", 0, 48]]);
    expect(reach(500, 1199)).toEqual([
      ["b0", 0, 48],
      ["b0", 119.9, 0.1],
    ]);
  });

  test("before a band that holds no piece any more belongs to the band", () => {
    // The shortest left is 20 long, 22 with its gap.
    const firstPart = (yMm: number, more: Partial<Sized> = {}) => {
      const own = pieces.map((one, n) => ({ ...one, ...(n === 2 ? more : {}) }));
      const round = roundOf(givenCloth(own, [{}], { gapMm: 2 }), [at("p0", 0, yMm)], { reaches: [] });
      return [partsOf(round)[0]?.[1], round.otherReaches[0]?.some(({ from }) => from < 10 * yMm)];
    };
    expect(firstPart(22)[0]).toBe(0);
    // Then there is no other place for it to begin either.
    expect(firstPart(21.9)).toEqual([51.9 + 2, true]);
    // Turned, 30 × 15 is 15 long; one that may not be turned is not.
    const flat = { size: [15, 30] } as const;
    expect(firstPart(17, { ...flat, grain: "free", nap: "either" })[0]).toBe(0);
    expect(firstPart(17, flat)[0]).toBe(49);
  });

  test("of several runs and bolts is told in their order, each run with its own band", () => {
    const own = givenCloth(
      [...pieces, { size: [50, 10] }, { size: [50, 10] }],
      [{}, { lengthMm: 90 }, { lengthMm: 70 }],
      { gapMm: 2 },
    );
    const held = [at("p0", 0, 150), at("p1", 20, 60), at("p3", 0, 30, "b2")];
    const round = roundOf(own, held, { reaches: [undefined, { from: 1300, to: 1820 }, undefined] });
    expect(partsOf(round)).toEqual([
      ["b0", 0, 58],
      ["b0", 82, 46],
      ["b0", 182, undefined],
      ["b1", undefined, 90],
      ["b2", 0, 28],
      ["b2", 42, 28],
    ]);
    expect(round.otherReaches.length).toBe(3);
    // The second band of the bolt does not begin before the first ends.
    expect(Math.min(...(round.otherReaches[1] ?? []).map(({ from }) => from))).toBe(820);
    expect(Math.min(...(round.otherReaches[2] ?? []).map(({ from }) => from))).toBe(0);
    expect(round.rest).toMatchObject({ gapMm: 2, cutting: { kind: "straight", stages: 3 }, seed: 1 });
    expect("held" in roundOf({ ...own, held }, held, { reaches: [] }).rest).toBe(false);
  });

  test("has a few bands to try, spread over all there are, the one that takes the least among them", () => {
    // Of ten pieces 40, 50, … 130 long beside one of 20 at 200: ten ends behind it, and beginnings before it.
    const lengths = Array.from({ length: 10 }, (_, n) => 40 + 10 * n);
    const own = givenCloth([{ size: [40, 20] }, ...lengths.map((long) => ({ size: [40, long] as const }))]);
    const [tries = []] = roundOf(own, [at("p0", 0, 200)], { reaches: [] }).otherReaches;
    const starts = [...new Set(tries.map(({ from }) => from / 10))];
    // By hand: 220 − 130, − 120, … − 40 and 0 are eleven beginnings: the first and the seventh of them.
    expect(starts).toEqual([200, 0, 140]);
    const endsFrom = (from: number) => tries.filter((one) => one.from === 10 * from).map(({ to }) => to / 10);
    // From 200 they end at 240, 250, … 330: of ten every third. From 140 one that is 80 long ends where it does.
    expect(endsFrom(200)).toEqual([240, 270, 300, 330]);
    expect(endsFrom(0)).toEqual([220]);
    expect(endsFrom(140)).toEqual([220, 230, 250, 270]);
  });
});

describe("what lies free beside held pieces", () => {
  const fillOf = (pieces: readonly Sized[], held: readonly HeldPiece[], fill: FreeFill, gapMm = 0) =>
    spotsOf(roundOf(givenCloth(pieces, [{}], { gapMm }), held, { reaches: [], fill })).slice(held.length);
  const narrow: FreeFill = { first: "narrow", aim: "full" };
  const large: FreeFill = { first: "large", aim: "full" };

  test("is filled from the narrowest on, or from the largest", () => {
    // 20 are free on the left, 40 on the right: one of 20 × 30 fits both.
    const two = [{ size: [40, 30] }, { size: [20, 30] }] as const;
    expect(fillOf(two, [at("p0", 20, 0)], narrow)).toEqual([["p1", 0, 0, 0]]);
    expect(fillOf(two, [at("p0", 20, 0)], large)).toEqual([["p1", 60, 0, 0]]);
    // Held beside each other in one run: 40 × 70 lie free behind the first, 30 × 90 beside both. The largest is the
    // first of them by its area; the narrowest the second, though it is the longer.
    const run = [{ size: [40, 20] }, { size: [30, 90] }, { size: [30, 60] }] as const;
    const held = [at("p0", 0, 0), at("p1", 40, 0)];
    expect(fillOf(run, held, narrow)).toEqual([["p2", 70, 0, 0]]);
    expect(fillOf(run, held, large)).toEqual([["p2", 0, 20, 0]]);
  });

  test("takes each piece once, a gap from the others, and turned where it fits so", () => {
    const free = { grain: "free", nap: "either" } as const;
    const pieces = [{ size: [40, 50] }, { size: [50, 18], ...free }, { size: [38, 20], ...free }] as const;
    // Left of it 20 with a gap of 2: 50 × 18 fits turned. Right of it 38 and a gap.
    expect(fillOf(pieces, [at("p0", 20, 0)], narrow, 2)).toEqual([
      ["p1", 0, 0, 90],
      ["p2", 62, 0, 0],
    ]);
  });

  test("holds nothing where nobody fills it", () => {
    const two = givenCloth([{ size: [40, 30] }, { size: [20, 30] }]);
    const round = roundOf(two, [at("p0", 20, 0)], { reaches: [] });
    expect([spotsOf(round), round.rest.pieces.map(({ id }) => id)]).toEqual([[["p0", 20, 0, 0]], ["p1"]]);
  });
});

describe("widths to be joined to a held one", () => {
  const widths: Sized[] = [0, 1, 2].map((index) => ({ size: [90, 50], join: { group: "j", index } }));
  const other: Sized = { size: [90, 50], join: { group: "k", index: 0 } };
  const startsOf = (held: readonly HeldPiece[], more: Partial<ClothProblem>, pieces = [...widths, other]) =>
    Object.fromEntries(
      roundOf(givenCloth(pieces, [{ rowMm: 10 }, { rowMm: 20 }], more), held, {
        reaches: [],
      }).rest.pieces.map(({ id, start }) => [id, start]),
    );
  const repeat = { alongMm: 64, match: "straight" } as const;

  // By hand: 130 − 10 is 56 below a row of 64.
  test("begin at the same place of the repeat; those of another join anywhere", () => {
    expect(startsOf([at("p0", 0, 130)], { repeat })).toEqual({
      p1: { alongMm: 56 },
      p2: { alongMm: 56 },
      p3: undefined,
    });
    // 130 − 20 is 46 below a row of the other bolt.
    expect(startsOf([at("p0", 0, 130, "b1")], { repeat })).toMatchObject({ p1: { alongMm: 46 } });
    expect(startsOf([at("p0", 0, 4)], { repeat })).toMatchObject({ p1: { alongMm: 58 } });
  });

  test("keep their column, and in a half drop count their own half rows on", () => {
    const columns = [...widths, other].map((one) => ({ ...one, start: { acrossMm: 5 } }));
    const across = { ...repeat, acrossMm: 20 };
    expect(startsOf([at("p0", 5, 130)], { repeat: across }, columns)).toMatchObject({
      p1: { alongMm: 56, acrossMm: 5 },
      p3: { acrossMm: 5 },
    });
    // The second width is 32 on: 130 − 10 − 32 is 24 below a row of the first.
    const half = { alongMm: 64, match: "half-drop" } as const;
    expect(startsOf([at("p1", 0, 130)], { repeat: half })).toMatchObject({
      p0: { alongMm: 24 },
      p2: { alongMm: 24 },
    });
  });

  test("are as they were on plain cloth, and where the held one has a start of its own", () => {
    expect(startsOf([at("p0", 0, 130)], {})).toEqual({ p1: undefined, p2: undefined, p3: undefined });
    const fixed = [{ ...widths[0], start: { alongMm: 56 } } as Sized, ...widths.slice(1), other];
    expect(startsOf([at("p0", 0, 130)], { repeat }, fixed)).toEqual({
      p1: undefined,
      p2: undefined,
      p3: undefined,
    });
  });
});
