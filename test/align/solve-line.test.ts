import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  compareScores,
  type LineProblem,
  type LineSolution,
  type LineWindow,
  solveLine,
  verifyLine,
} from "../../src/align/index.ts";
import type { LineAsk } from "../../src/shade-plan/index.ts";
import { inches } from "../../src/units/index.ts";
import { everyLine } from "./every-line.ts";

type Aligned = Extract<LineSolution, { kind: "aligned" }>;

const usual: LineAsk = {
  lengthMm: 1500,
  leastHeadrailMm: 70,
  headrailFixed: false,
  bottom: { kind: "half-fold", skirtMm: 0 },
  bottomFixed: false,
  smallestMm: 75,
  largestMm: 200,
  leastGatheredMm: 0,
};

function window(id: string, topMm: number | undefined, ask: Partial<LineAsk> = {}): LineWindow {
  return {
    id,
    ...(topMm === undefined ? {} : { topMm }),
    ask: { ...usual, ...ask },
    own: { rows: 7, raisedMm: 165 },
  };
}

function room(windows: LineWindow[], rest: Partial<LineProblem> = {}): LineProblem {
  return { markMm: 1, windows, folds: "levels", stack: true, mostLowerMm: 200, ...rest };
}

function aligned(problem: LineProblem): Aligned {
  const solution = solveLine(problem);
  expect(verifyLine(problem, solution)).toEqual([]);
  if (solution.kind !== "aligned") throw new Error("invalid room: nothing is shared");
  return solution;
}

describe("a room by hand", () => {
  /*
   * Plane geometry, worked on paper. Spacing fixed at 150 mm, so half a fold is 75 mm; least headrail 70 mm.
   * A: top 2100, length 1450, hem at 650. First row at 650 + 75 = 725, 8 rows up to 1775, headrail line 1925,
   *    headrail 2100 − 1925 = 175: 105 more than it needs. A ninth row would leave 25 mm: too little.
   * B: top 2050, length 1100, hem at 950. Its first row wants to be at 1025 = 725 + 2 × 150: on A's level.
   *    6 rows up to 1775, headrail line 1925, headrail 125: 55 more than it needs.
   * C: top 2100, length 2080, hem at 20. First row wanted at 95; A's levels go 725, 575, 425, 275, 125: the hem
   *    section grows by 30 mm to 105. 12 rows up to 1775, headrail line 1925.
   */
  const problem = room(
    [
      window("a", 2100, { lengthMm: 1450 }),
      window("b", 2050, { lengthMm: 1100 }),
      window("c", 2100, { lengthMm: 2080 }),
    ],
    { spacingMm: 150, stack: false },
  );

  it("has its rows where paper has them", () => {
    const { layouts } = aligned(problem);
    expect(layouts.get("a")?.layout).toMatchObject({
      rows: 8,
      bottomMm: 75,
      headrailMm: 175,
      headrailExtraMm: 105,
    });
    expect(layouts.get("b")?.layout).toMatchObject({
      rows: 6,
      bottomMm: 75,
      headrailMm: 125,
      headrailExtraMm: 55,
    });
    expect(layouts.get("c")?.layout).toMatchObject({
      rows: 12,
      bottomMm: 105,
      headrailMm: 175,
      bottomExtraMm: 30,
    });
  });

  it("counts what hangs, what gave (twice at 4 in), and half an inch a row", () => {
    // Each needs 70 + 75 mm; they gave 105, 55 and 105 + 30 mm; 26 rows.
    const gave = [105, 55, 135].reduce((sum, mm) => sum + mm * (1 + mm / 101.6), 0);
    expect(aligned(problem).score).toMatchObject({ levels: 3, followers: 3, bottomExtraMm: 30 });
    expect(aligned(problem).score.costMm).toBeCloseTo(3 * 145 + gave + 26 * 12.7, 9);
  });

  it("finds the raised hems that meet: hem + rows × spacing", () => {
    // 650 + 8 × 150 = 1850 and 950 + 6 × 150 = 1850; C hangs at 20 + 1800 = 1820.
    const { raisedHemMm, layouts } = aligned({ ...problem, stack: true });
    expect(raisedHemMm).toBe(1850);
    const sharing = [...layouts].filter(([, { sharesRaisedHem }]) => sharesRaisedHem);
    expect(sharing.map(([id]) => id).sort()).toEqual(["a", "b"]);
  });
});

describe("what gives", () => {
  it("a window alone shares nothing", () => {
    expect(solveLine(room([window("a", 2100)]))).toEqual({ kind: "nothing-shared" });
    expect(solveLine(room([]))).toEqual({ kind: "nothing-shared" });
  });

  it("windows of unknown height share the spacing", () => {
    const { layouts } = aligned(room([window("a", undefined), window("b", undefined, { lengthMm: 1300 })]));
    expect([...layouts.values()].map(({ follows }) => follows)).toEqual(["spacing", "spacing"]);
  });

  it("a hem section that the maker fixed may keep a window from the levels, not from the spacing", () => {
    const fixed = { bottomFixed: true, bottom: { kind: "half-fold", skirtMm: 0 } } as const;
    const { layouts } = aligned(
      room([window("a", 2100, fixed), window("b", 2033, fixed), window("c", 2100, fixed)], {
        spacingMm: 150,
      }),
    );
    expect(layouts.get("a")?.follows).toBe("levels");
    expect(layouts.get("b")?.follows).toBe("spacing");
    expect(layouts.get("c")?.follows).toBe("levels");
  });

  it("limits that do not meet leave a window its own rows", () => {
    const { layouts } = aligned(
      room([window("a", 2100), window("b", 2100), window("c", 2100, { smallestMm: 260, largestMm: 300 })]),
    );
    expect([...layouts.keys()]).toEqual(["a", "b"]);
  });

  it("keeps the stack limit of the published slides: 20 cm, at 172 cm long with 4 cm of headrail", () => {
    // “Подъемные шторы”: six folds of 27.5 cm stack to 20.75 cm; the limit itself holds here.
    const slides: Partial<LineAsk> = {
      lengthMm: 1720,
      leastHeadrailMm: 40,
      bottom: { kind: "hem-bar", hemBarMm: 30, ringStackMm: 30 },
      largestMm: 300,
      leastGatheredMm: 1720 / 3,
      stackMm: 200,
    };
    const { layouts } = aligned(room([window("a", 2000, slides), window("b", 1985, slides)]));
    for (const { layout } of layouts.values()) expect(layout.raisedMm).toBeLessThanOrEqual(200);
    expect(layouts.size).toBe(2);
  });
});

const mm = (min: number, max: number) => fc.integer({ min, max });

/** Nearly always the usual, so that most rooms have something to share. */
function seldom<T>(usually: T, odd: fc.Arbitrary<T>): fc.Arbitrary<T> {
  return fc.oneof({ weight: 6, arbitrary: fc.constant(usually) }, { weight: 1, arbitrary: odd });
}

const limit = (min: number, max: number) => seldom<number | undefined>(undefined, mm(min, max));

const anyAsk: fc.Arbitrary<LineAsk> = fc
  .record({
    lengthMm: fc.oneof(
      mm(300, 2600),
      fc.constantFrom(1000, 1200, 1500),
      fc.double({ min: 50, max: 2600, noNaN: true }),
    ),
    leastHeadrailMm: mm(0, 150),
    headrailFixed: seldom(false, fc.constant(true)),
    bottom: fc.oneof(
      { weight: 6, arbitrary: fc.record({ kind: fc.constant("half-fold" as const), skirtMm: mm(0, 60) }) },
      {
        weight: 1,
        arbitrary: fc.record({
          kind: fc.constant("hem-bar" as const),
          hemBarMm: mm(0, 90),
          ringStackMm: mm(0, 40),
        }),
      },
    ),
    bottomFixed: seldom(false, fc.constant(true)),
    smallestMm: mm(60, 90),
    largestMm: mm(90, 160),
    rows: limit(1, 15),
    spacingMm: limit(70, 150),
    stackMm: limit(100, 400),
  })
  .map((ask) => ({ ...ask, leastGatheredMm: ask.bottom.kind === "hem-bar" ? ask.lengthMm / 3 : 0 }));

const anyTop = fc.oneof(
  { weight: 1, arbitrary: fc.constant(undefined) },
  { weight: 4, arbitrary: mm(1200, 2700) },
  { weight: 3, arbitrary: fc.constantFrom(2000, 2100) },
  { weight: 2, arbitrary: fc.double({ min: 300, max: 3000, noNaN: true }) },
);

function anyRoom(most: number, markMm: number): fc.Arbitrary<LineProblem> {
  const one = fc.record({
    topMm: anyTop,
    ask: anyAsk,
    own: fc.record({ rows: mm(1, 12), raisedMm: mm(80, 500) }),
  });
  // Windows as rooms have them: sills and heads at a few heights, no wishes.
  const plain = fc.record({
    topMm: fc.constantFrom(2000, 2050, 2100, 2200),
    ask: fc
      .record({ lengthMm: fc.constantFrom(900, 1000, 1150, 1200, 1400), largestMm: mm(90, 160) })
      .map((some): LineAsk => ({ ...usual, smallestMm: 60, ...some })),
    own: fc.record({ rows: mm(4, 12), raisedMm: mm(100, 200) }),
  });
  const windows = (each: typeof one | typeof plain) =>
    fc.array<Omit<LineWindow, "id">>(each, { minLength: 2, maxLength: most, size: "max" });
  return fc.record({
    markMm: fc.constant(markMm),
    windows: fc
      .oneof(windows(one), windows(plain))
      .map((listed) => listed.map((window, i): LineWindow => ({ id: `w${i}`, ...window }))),
    folds: fc.constantFrom("levels" as const, "levels" as const, "spacing" as const),
    stack: fc.constantFrom(true, true, false),
    spacingMm: limit(70, 150),
    mostLowerMm: fc.oneof(mm(0, 300), fc.constantFrom(200, 400)),
  });
}

describe("any room", () => {
  it("is answered, and the answer holds on the wall", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(1, inches(1 / 8), inches(1 / 16)).chain((mark) => anyRoom(6, mark)),
        (problem) => {
          expect(verifyLine(problem, solveLine(problem))).toEqual([]);
        },
      ),
      { numRuns: 300 },
    );
  });

  it("has the answer of an exhaustive search over every spacing, level, row count and shared hem", () => {
    fc.assert(
      fc.property(anyRoom(3, 5), (problem) => {
        const solution = solveLine(problem);
        const best = everyLine(problem);
        if (solution.kind === "nothing-shared") expect(best?.followers ?? 0).toBeLessThan(2);
        else {
          if (best === undefined) throw new Error("the exhaustive search found nothing");
          expect(compareScores(solution.score, best), JSON.stringify([solution.score, best])).toBe(0);
        }
      }),
      { numRuns: 150 },
    );
  });

  it("does not hang on the order in which its windows are listed", () => {
    fc.assert(
      fc.property(anyRoom(6, 1), (problem) => {
        const turned = { ...problem, windows: [...problem.windows].reverse() };
        const byId = (solution: LineSolution) =>
          solution.kind === "aligned"
            ? { ...solution, layouts: [...solution.layouts].sort(([a], [b]) => (a < b ? -1 : 1)) }
            : solution;
        expect(byId(solveLine(turned))).toEqual(byId(solveLine(problem)));
      }),
      { numRuns: 100 },
    );
  });
});

describe("a large room", () => {
  it("of twelve windows, each different, is still searched in full", () => {
    const windows = Array.from({ length: 12 }, (_, i) =>
      window(`w${i}`, 2000 + 17 * i, { lengthMm: 1200 + 37 * i }),
    );
    expect(aligned(room(windows)).proven).toBe(true);
  });

  it("of two thousand alike is searched in full", () => {
    const windows = Array.from({ length: 2000 }, (_, i) => window(`w${i}`, i % 2 ? 2100 : 2050));
    const solution = aligned(room(windows));
    expect(solution.proven).toBe(true);
    expect(solution.layouts.size).toBe(2000);
  });
});
