import { describe, expect, test } from "vitest";
import type { Bolt, BoltPlan, ClothProblem, Cut, Leaf, Placement } from "./index.ts";
import { verifyCloth } from "./index.ts";

/**
 * One bolt cut up by hand: a length of 1000 mm with `a` beside `c`, below it a length of 500 mm that is `d`, and what
 * is cut off below `c` is kept. What is wrong with each change of it follows from the words of `problem.ts`.
 */
const BOLT: Bolt = { id: "b", remnant: false, widthMm: 1000, lengthMm: 3000, flaws: [], costPerMm: 1 };
const SIZES = { a: [600, 1000], c: [400, 700], d: [1000, 500] } as const;

const PROBLEM: ClothProblem = {
  id: "cloth",
  bolts: [BOLT],
  pieces: Object.entries(SIZES).map(([id, [widthMm, lengthMm]]) => ({
    id,
    shade: "s",
    part: id,
    widthMm,
    lengthMm,
    grain: "fixed",
    nap: "one-way",
  })),
  gapMm: 0,
  cutting: { kind: "straight", stages: 3 },
  keep: { widthMm: 200, lengthMm: 200 },
  seed: 1,
};

const lying = (pieceId: keyof typeof SIZES, xMm: number, yMm: number): Placement => {
  const [widthMm, lengthMm] = SIZES[pieceId];
  return { pieceId, xMm, yMm, widthMm, lengthMm, turn: 0 };
};

type Sheets = [sheet: number, first: number, second: number];
const cut = (
  number: number,
  direction: Cut["direction"],
  atMm: number,
  [sheet, first, second]: Sheets,
  more: Partial<Cut> = {},
): Cut => ({ number, direction, stage: 1, sheet, first, second, atMm, trim: false, ...more });

const leaf = (
  sheet: number,
  [xMm, yMm, widthMm, lengthMm]: readonly [number, number, number, number],
  holds: Leaf["holds"],
): Leaf => ({ sheet, xMm, yMm, widthMm, lengthMm, holds });
const piece = (pieceId: string) => ({ kind: "piece" as const, pieceId });

const PLAN: BoltPlan = {
  boltId: "b",
  usedMm: 1500,
  placements: [lying("a", 0, 0), lying("c", 600, 0), lying("d", 0, 1000)],
  cuts: [
    cut(1, "across", 1000, [0, 1, 2], { boltLeftMm: 2000 }),
    cut(2, "across", 1500, [2, 3, 4], { boltLeftMm: 1500 }),
    cut(3, "along", 600, [1, 5, 6]),
    cut(4, "across", 700, [6, 7, 8]),
  ],
  leaves: [
    leaf(3, [0, 1000, 1000, 500], piece("d")),
    leaf(4, [0, 1500, 1000, 1500], { kind: "rest" }),
    leaf(5, [0, 0, 600, 1000], piece("a")),
    leaf(7, [600, 0, 400, 700], piece("c")),
    leaf(8, [600, 700, 400, 300], { kind: "remnant", name: "b, remnant 1" }),
  ],
  remnants: [{ name: "b, remnant 1", boltId: "b", xMm: 600, yMm: 700, widthMm: 400, lengthMm: 300 }],
};

function faultsOf(changed: Partial<BoltPlan>, problem: Partial<ClothProblem> = {}): string[] {
  const bolt = { ...PLAN, ...changed };
  return verifyCloth(
    { ...PROBLEM, ...problem },
    {
      status: "feasible",
      bolts: [bolt],
      cost: bolt.usedMm,
      bound: { cost: 0, which: "area" },
      gap: 1,
      evaluations: 0,
    },
  );
}

const cutsWith = (number: number, more: Partial<Cut>) => ({
  cuts: PLAN.cuts.map((one) => (one.number === number ? { ...one, ...more } : one)),
});
const leavesWith = (sheet: number, more: Partial<Leaf>) => ({
  leaves: PLAN.leaves.map((one) => (one.sheet === sheet ? { ...one, ...more } : one)),
});

test("the plan itself can be cut", () => {
  expect(faultsOf({})).toEqual([]);
});

describe("cuts", () => {
  test.each<[string, Partial<BoltPlan>, string]>([
    ["wrongly numbered", cutsWith(3, { number: 5 }), "cut 5 of bolt b is out of order"],
    [
      "of a sheet that is not there",
      cutsWith(4, { sheet: 9 }),
      "cut 4 of bolt b goes through a sheet that is not there",
    ],
    [
      "of a sheet cut already",
      cutsWith(4, { sheet: 1 }),
      "cut 4 of bolt b goes through a sheet that is not there",
    ],
    ["at the edge before", cutsWith(2, { atMm: 1000 }), "cut 2 of bolt b misses its sheet"],
    ["at the edge behind", cutsWith(2, { atMm: 3000 }), "cut 2 of bolt b misses its sheet"],
    [
      "along, beside the sheet",
      cutsWith(4, { direction: "along", atMm: 600 }),
      "cut 4 of bolt b misses its sheet",
    ],
    ["through a piece across", cutsWith(1, { atMm: 990 }), "cut 1 of bolt b goes through a"],
    ["through another across", cutsWith(1, { atMm: 1010 }), "cut 1 of bolt b goes through d"],
    ["through a piece along", cutsWith(3, { atMm: 590 }), "cut 3 of bolt b goes through a"],
    ["through another along", cutsWith(3, { atMm: 610 }), "cut 3 of bolt b goes through c"],
    [
      "that leave a sheet twice",
      cutsWith(3, { first: 3 }),
      "cut 3 of bolt b leaves sheets that are there already",
    ],
    [
      "that leave it second",
      cutsWith(3, { second: 3 }),
      "cut 3 of bolt b leaves sheets that are there already",
    ],
    [
      "with less bolt left than said",
      cutsWith(1, { boltLeftMm: 2001 }),
      "cut 1 of bolt b leaves another length of bolt than it says",
    ],
    [
      "with more bolt left than said",
      cutsWith(1, { boltLeftMm: 1999 }),
      "cut 1 of bolt b leaves another length of bolt than it says",
    ],
    [
      "along with bolt left",
      cutsWith(3, { boltLeftMm: 2400 }),
      "cut 3 of bolt b leaves another length of bolt than it says",
    ],
    ["that leave pieces together", { cuts: PLAN.cuts.slice(0, 2) }, "a, c are not cut apart"],
    ["that leave cloth on a piece", { cuts: PLAN.cuts.slice(0, 3) }, "c is not cut out on all sides"],
    ["that are missing", { cuts: [] }, "bolt b has no cuts"],
  ])("%s", (_, changed, fault) => {
    expect(faultsOf(changed)).toContain(fault);
  });

  test("a hundredth of a millimetre beside the edge of a piece goes through nothing", () => {
    const aside = (by: number) => faultsOf({ ...cutsWith(3, { atMm: 600 + by }) });
    for (const by of [0.005, -0.005]) expect(aside(by)).toEqual([]);
    for (const by of [0.02, -0.02]) expect(aside(by)).toContainEqual(expect.stringContaining("goes through"));
    // Just that much from where a, c and the bolt begin.
    expect(faultsOf(cutsWith(1, { atMm: 0.01 })).filter((fault) => fault.includes("goes through"))).toEqual(
      [],
    );
    expect(faultsOf(cutsWith(1, { atMm: 0.011 }))).toContain("cut 1 of bolt b goes through a");
    const through = (number: number, atMm: number) =>
      faultsOf(cutsWith(number, { atMm })).filter((fault) =>
        fault.startsWith(`cut ${number} of bolt b goes`),
      );
    expect(through(3, 0.01)).toEqual([]);
    expect(through(3, 0.011)).toEqual(["cut 3 of bolt b goes through a"]);
    // And from where a and c end.
    expect(through(3, 599.99)).toEqual([]);
    expect(through(3, 599.98)).toEqual(["cut 3 of bolt b goes through a"]);
    expect(through(4, 699.99)).toEqual([]);
    expect(through(4, 699.98)).toEqual(["cut 4 of bolt b goes through c"]);
  });

  test("the length of bolt left is what a ruler shows of it", () => {
    expect(faultsOf(cutsWith(1, { boltLeftMm: 2000.1 }))).toEqual([]);
    expect(faultsOf(cutsWith(1, { boltLeftMm: 2000.2 }))).toHaveLength(1);
  });

  test("an endless bolt has no length left", () => {
    const { lengthMm: _, ...endless } = BOLT;
    const bolts = [endless];
    const leaves = PLAN.leaves.filter(({ sheet }) => sheet !== 4);
    const cuts = PLAN.cuts.map(({ boltLeftMm: _, ...one }) => one);
    expect(faultsOf({ leaves, cuts }, { bolts })).toEqual([]);
    expect(faultsOf({ leaves }, { bolts })).toEqual([
      "cut 1 of bolt b leaves another length of bolt than it says",
      "cut 2 of bolt b leaves another length of bolt than it says",
    ]);
  });

  test("none are needed with scissors, none where nothing lies, and none where one piece is the bolt", () => {
    expect(faultsOf({ cuts: [], leaves: [], remnants: [] }, { cutting: { kind: "free" } })).toEqual([]);
    const whole = (x: number, y: number, bolt: Partial<Bolt>) =>
      faultsOf(
        { cuts: [], leaves: [], remnants: [], placements: [lying("d", x, y)], usedMm: 500 + y },
        { bolts: [{ ...BOLT, ...bolt }], pieces: PROBLEM.pieces.filter(({ id }) => id === "d") },
      );
    expect(whole(0, 0, { lengthMm: 500 })).toEqual([]);
    expect(whole(0, 0, { lengthMm: 500.09, widthMm: 1000.09 })).toEqual([]);
    const none = ["bolt b has no cuts"];
    expect(whole(0, 0, {})).toEqual(none);
    expect(whole(0, 0, { lengthMm: 501 })).toEqual(none);
    expect(whole(0, 0, { lengthMm: 500, widthMm: 1001 })).toEqual(none);
    expect(whole(0.05, 0, { lengthMm: 500, widthMm: 1000.08 })).toEqual(none);
    expect(whole(0, 0.05, { lengthMm: 500.08 })).toEqual(none);
    const { lengthMm: _, ...endless } = BOLT;
    const pieces = PROBLEM.pieces.filter(({ id }) => id === "d");
    const plan = { cuts: [], leaves: [], remnants: [], placements: [lying("d", 0, 0)], usedMm: 500 };
    expect(faultsOf(plan, { bolts: [endless], pieces })).toEqual(none);
    expect(faultsOf({ ...plan, placements: [], usedMm: 0 }, { pieces: [] })).toEqual([]);
  });
});

describe("the table", () => {
  test("no cut along is longer than it, but for the longest piece with its repeat", () => {
    const longer = (tableMm: number, more: Partial<ClothProblem> = {}) => faultsOf({}, { tableMm, ...more });
    expect(longer(1000)).toEqual([]);
    // The longest piece is 1000 long: the cut along it may be.
    expect(longer(500)).toEqual([]);
    const [, d, c] = PROBLEM.pieces.toReversed();
    expect([d?.id, c?.id]).toEqual(["c", "a"]);
    const short: Placement[] = [lying("c", 0, 0), { ...lying("c", 400, 0), pieceId: "a" }];
    const pieces = PROBLEM.pieces.flatMap((one) =>
      one.id === "d" ? [] : [{ ...one, widthMm: 400, lengthMm: 700 }],
    );
    const plan = {
      placements: short,
      usedMm: 700,
      cuts: [
        cut(1, "along", 400, [0, 1, 2]),
        cut(2, "across", 700, [1, 3, 4]),
        cut(3, "along", 800, [2, 5, 6]),
        cut(4, "across", 700, [5, 7, 8]),
      ],
      leaves: [
        leaf(3, [0, 0, 400, 700], piece("c")),
        leaf(4, [0, 700, 400, 2300], { kind: "rest" }),
        leaf(6, [800, 0, 200, 3000], { kind: "waste" }),
        leaf(7, [400, 0, 400, 700], piece("a")),
        leaf(8, [400, 700, 400, 2300], { kind: "rest" }),
      ],
      remnants: [],
    };
    const both = ["cut 1 of bolt b is longer than the table", "cut 3 of bolt b is longer than the table"];
    expect(faultsOf(plan, { pieces })).toEqual([]);
    expect(faultsOf(plan, { pieces, tableMm: 3000 })).toEqual([]);
    expect(faultsOf(plan, { pieces, tableMm: 2999 })).toEqual(both);
    expect(faultsOf(plan, { pieces, tableMm: 2999, cutting: { kind: "free" } })).toEqual([]);
    const repeat = (alongMm: number) => ({ repeat: { alongMm, match: "straight" as const } });
    expect(faultsOf(plan, { pieces, tableMm: 100, ...repeat(2300) })).toEqual([]);
    expect(faultsOf(plan, { pieces, tableMm: 100, ...repeat(2299) })).toEqual(both);
  });
});

describe("stages", () => {
  test("are counted from the cuts, one more wherever their direction changes", () => {
    const stages = (count: number) => faultsOf({}, { cutting: { kind: "straight", stages: count } });
    expect(stages(3)).toEqual([]);
    expect(stages(2)).toEqual(["cut 4 of bolt b is in stage 3"]);
    expect(stages(1)).toEqual(["cut 3 of bolt b is in stage 2", "cut 4 of bolt b is in stage 3"]);
    expect(faultsOf({}, { cutting: { kind: "straight" } })).toEqual([]);
  });

  test("trimming a piece counts for one less", () => {
    const withoutUnwanted = (count: number) =>
      faultsOf(cutsWith(4, { trim: true }), { cutting: { kind: "straight", stages: count } });
    expect(withoutUnwanted(2)).toEqual([]);
    expect(withoutUnwanted(1)).toEqual(["cut 3 of bolt b is in stage 2", "cut 4 of bolt b is in stage 3"]);
  });

  test("a first cut along is in the second, and with scissors nobody counts", () => {
    const along: Partial<BoltPlan> = {
      placements: [lying("a", 0, 0)],
      usedMm: 1000,
      cuts: [cut(1, "along", 600, [0, 1, 2]), cut(2, "across", 1000, [1, 3, 4])],
      leaves: [
        leaf(2, [600, 0, 400, 3000], { kind: "waste" }),
        leaf(3, [0, 0, 600, 1000], piece("a")),
        leaf(4, [0, 1000, 600, 2000], { kind: "rest" }),
      ],
      remnants: [],
    };
    const pieces = PROBLEM.pieces.filter(({ id }) => id === "a");
    const staged = (stages: number) => faultsOf(along, { pieces, cutting: { kind: "straight", stages } });
    expect(staged(3)).toEqual([]);
    expect(staged(1)).toEqual(["cut 1 of bolt b is in stage 2", "cut 2 of bolt b is in stage 3"]);
    expect(faultsOf(along, { pieces, cutting: { kind: "free" } })).toEqual([]);
  });
});

describe("what is left at the end", () => {
  test.each<[string, Partial<BoltPlan>, string[]]>([
    [
      "a sheet that nobody names",
      { leaves: PLAN.leaves.filter(({ sheet }) => sheet !== 4) },
      ["sheet 4 of bolt b is not accounted for"],
    ],
    [
      "a sheet that is not there",
      { leaves: [...PLAN.leaves, leaf(2, [0, 0, 1, 1], { kind: "waste" })] },
      ["there is no sheet 2 of bolt b"],
    ],
    ["a sheet moved across", leavesWith(5, { xMm: 1 }), ["sheet 5 of bolt b has another size than said"]],
    ["a sheet moved along", leavesWith(5, { yMm: 1 }), ["sheet 5 of bolt b has another size than said"]],
    ["a narrower sheet", leavesWith(5, { widthMm: 599 }), ["sheet 5 of bolt b has another size than said"]],
    ["a shorter sheet", leavesWith(5, { lengthMm: 999 }), ["sheet 5 of bolt b has another size than said"]],
    [
      "a piece called another",
      leavesWith(5, { holds: piece("c") }),
      ["sheet 5 of bolt b holds something else than said"],
    ],
    [
      "a piece called waste",
      leavesWith(5, { holds: { kind: "waste" } }),
      ["sheet 5 of bolt b holds something else than said"],
    ],
    [
      "waste called a piece",
      leavesWith(4, { holds: piece("c") }),
      ["sheet 4 of bolt b holds something else than said"],
    ],
    [
      "a remnant by another name",
      { remnants: PLAN.remnants.map((one) => ({ ...one, name: "b, remnant 2" })) },
      ["remnant b, remnant 2 is not among the sheets"],
    ],
    [
      "a remnant that is waste",
      leavesWith(8, { holds: { kind: "waste" } }),
      ["remnant b, remnant 1 is not among the sheets"],
    ],
    [
      "a remnant larger than its sheet",
      { remnants: PLAN.remnants.map((one) => ({ ...one, lengthMm: 310 })) },
      ["remnant b, remnant 1 is not among the sheets"],
    ],
  ])("%s", (_, changed, faults) => {
    expect(faultsOf(changed)).toEqual(faults);
  });

  test("a tenth of a millimetre is the same size, more is not", () => {
    expect(faultsOf(leavesWith(5, { widthMm: 600.1, lengthMm: 999.9 }))).toEqual([]);
    expect(faultsOf(leavesWith(5, { widthMm: 600.12 }))).toHaveLength(1);
  });

  test("a remnant has no flaw; waste may have", () => {
    const flawed = (yMm: number) => {
      const flaws = [{ xMm: 700, yMm, widthMm: 20, lengthMm: 20 }];
      return faultsOf({}, { bolts: [{ ...BOLT, flaws }] });
    };
    expect(flawed(800)).toEqual(["remnant b, remnant 1 has a flaw"]);
    expect(flawed(1600)).toEqual([]);
  });
});

describe("lengths cut two at a time", () => {
  const two: ClothProblem["pieces"] = ["a", "c"].map((id) => ({
    id,
    shade: "s",
    part: id,
    widthMm: 600,
    lengthMm: 1000,
    grain: "fixed",
    nap: "one-way",
  }));
  const placements = [0, 1].map((n) => ({ ...lying("a", 0, 1000 * n), pieceId: n === 0 ? "a" : "c" }));
  const cuts = [
    cut(1, "across", 1000, [0, 1, 2]),
    cut(2, "across", 2000, [2, 3, 4]),
    cut(3, "along", 600, [1, 5, 6]),
    cut(4, "along", 600, [3, 7, 8], { withCut: 3 }),
  ];
  const leaves = [
    leaf(4, [0, 2000, 1000, 1000], { kind: "rest" }),
    leaf(5, [0, 0, 600, 1000], piece("a")),
    leaf(6, [600, 0, 400, 1000], { kind: "waste" }),
    leaf(7, [0, 1000, 600, 1000], piece("c")),
    leaf(8, [600, 1000, 400, 1000], { kind: "waste" }),
  ];
  const plan: Partial<BoltPlan> = { placements, usedMm: 2000, cuts, leaves, remnants: [] };
  const doubled = (more: Partial<Cut>, problem: Partial<ClothProblem> = {}) =>
    faultsOf(
      { ...plan, cuts: cuts.map((one) => (one.number === 4 ? { ...one, ...more } : one)) },
      { pieces: two, ...problem },
    );
  const notOne = "cut 4 is not one with the cut before";

  test("lie on each other, plain and of one size, and are cut at one place", () => {
    expect(doubled({})).toEqual([]);
    expect(doubled({ withCut: 2 })).toEqual([notOne]);
    expect(doubled({ atMm: 620 })).toContain(notOne);
    expect(doubled({ direction: "across", atMm: 1600 })).toContain(notOne);
    expect(doubled({ sheet: 9 })).toContain(notOne);
    expect(doubled({}, { repeat: { alongMm: 100, match: "straight" } })).toEqual([notOne]);
  });

  test("are not one with the first cut of all", () => {
    const first = cuts.map((one) => (one.number === 1 ? { ...one, withCut: 0 } : one));
    expect(faultsOf({ ...plan, cuts: first }, { pieces: two })).toEqual([
      "cut 1 is not one with the cut before",
    ]);
  });

  // Cut across on each other: at the same distance from where each of the lengths begins.
  const across = (from: number, lengthMm: number) => {
    const size = [
      { ...lying("c", 0, 0), widthMm: 1000, lengthMm: 700, pieceId: "a" },
      { ...lying("c", 0, from), widthMm: 1000, lengthMm: 700 },
    ];
    const atMm = from + lengthMm;
    return faultsOf(
      {
        placements: size,
        usedMm: from + 700,
        cuts: [
          cut(1, "across", 1000, [0, 1, 2]),
          cut(2, "across", 2000, [2, 3, 4]),
          cut(3, "across", 700, [1, 5, 6]),
          cut(4, "across", atMm, [3, 7, 8], { withCut: 3 }),
        ],
        leaves: [
          leaf(4, [0, 2000, 1000, 1000], { kind: "rest" }),
          leaf(5, [0, 0, 1000, 700], piece("a")),
          leaf(6, [0, 700, 1000, 300], { kind: "waste" }),
          leaf(7, [0, 1000, 1000, 700], piece("c")),
          leaf(8, [0, 1700, 1000, 300], { kind: "waste" }),
        ],
        remnants: [],
      },
      { pieces: two.map((one) => ({ ...one, widthMm: 1000, lengthMm: 700 })) },
    );
  };
  test("are cut across at the same distance from where they begin", () => {
    expect(across(1000, 700)).toEqual([]);
    expect(across(1000, 750)).toContain(notOne);
  });

  test.each<[string, Partial<Cut>, Partial<Cut>]>([
    ["length", { atMm: 1000 }, { atMm: 1900 }],
    ["length, the second longer", { atMm: 1000 }, { atMm: 2100 }],
  ])("are not one where they are not of one %s", (_, first, second) => {
    const changed = cuts.map((one) =>
      one.number === 1 ? { ...one, ...first } : one.number === 2 ? { ...one, ...second } : one,
    );
    expect(faultsOf({ ...plan, cuts: changed }, { pieces: two })).toContain(notOne);
  });

  test("are not one where they lie side by side or are not of one width", () => {
    // Three columns of one length; the second cut across is said to be one with the first.
    const beside = (leftMm: number, rightMm: number) =>
      faultsOf(
        {
          ...plan,
          cuts: [
            cut(1, "along", leftMm, [0, 1, 2]),
            cut(2, "along", rightMm, [2, 3, 4]),
            cut(3, "across", 1000, [1, 5, 6]),
            cut(4, "across", 1000, [3, 7, 8], { withCut: 3 }),
          ],
        },
        { pieces: two },
      );
    expect(beside(400, 800)).toContain(notOne);
    expect(beside(400, 700)).toContain(notOne);
  });
});
