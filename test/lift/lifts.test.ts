import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { LIFT_KINDS, LIFT_TRAITS, type LiftKind, REAR_GUIDES, type RearGuide } from "../../src/job/index.ts";
import { type Plan, plan, type ShadePlan } from "../../src/plan/index.ts";
import type { Lift } from "../../src/shade-plan/index.ts";
import { BOARD_LIST, CORD_LIST, CUT_LIST, wholeList } from "../../src/tables/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

interface Wish {
  kind: LiftKind;
  rearCords?: RearGuide;
  controlSide?: "left" | "right";
}

function planned(lift: Wish): { made: Plan; shade: ShadePlan } {
  const made = plan(
    jobWith(
      {
        opening: { widthsMm: [940], heightsMm: [1500], sillAboveFloorMm: 800, recessDepthMm: 150 },
        shade: { making: { lift } },
      },
      { units: { system: "metric", ruler: "1 mm" }, place: "gb", purpose: "own-home" },
    ),
  );
  const [shade] = made.shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return { made, shade };
}

const TUBES = LIFT_KINDS.filter((kind) => LIFT_TRAITS[kind].takeUp === "tube");
const anyWish = fc.record({
  kind: fc.constantFrom(...LIFT_KINDS),
  rearCords: fc.constantFrom(...REAR_GUIDES),
  controlSide: fc.constantFrom("left" as const, "right" as const),
});

test("lowered, the cords carry bar, turned hem and what hangs below the bottom row: weighed on the cut pieces", () => {
  const { shade } = planned({ kind: "spring" });
  const { lift, grid, cloth, mass } = shade;
  if (lift.takeUp !== "tube") throw new Error("invalid lift: no tube");
  const kgOf = (...parts: string[]) =>
    mass.parts.filter(({ part }) => parts.includes(part)).reduce((sum, { massKg }) => sum + massKg, 0);
  const perMm2 = new Map(
    cloth.layers.map(({ layer, panels }) => {
      const areaMm2 = panels.reduce((sum, { widthMm, lengthMm }) => sum + widthMm * lengthMm, 0);
      return [layer, kgOf(layer) / areaMm2];
    }),
  );
  // The turned hem lies whole at the bottom; between hem line and bottom row the layer hangs once.
  const belowKg = cloth.layers.reduce(
    (sum, { layer, cutWidthMm, edges }) =>
      sum + (perMm2.get(layer) ?? 0) * cutWidthMm * (edges.bottomMm + grid.bottomSectionMm),
    0,
  );
  const rowKg = kgOf("rings", "ribs", "strips", "sleeves") / grid.rows.length;
  expectNear(lift.heldLoweredN, 9.80665 * (kgOf("bar") + rowKg + belowKg), 0.001 * lift.heldLoweredN);
});

function heightOf(lift: Lift): number {
  if (lift.takeUp === "tube") return lift.heightMm;
  return lift.takeUp === "lock" ? lift.housingHeightMm : lift.turn.diameterMm;
}

describe("every lift, however its cords run up the back, on either side", () => {
  test("is the one that was asked for, and keeps the folds of its own height", () => {
    fc.assert(
      fc.property(anyWish, (wish) => {
        const { shade } = planned(wish);
        expect(shade.lift).toMatchObject(wish);
        expect(shade.lift.cords.length).toBe(shade.grid.columns.length);
        // Mechanism depth + 2.5 cm (“Headrail allowance explained”), 6.5 cm at least, the board being part of it.
        const heightMm = heightOf(shade.lift);
        expect(shade.grid.headrailMm).toBeCloseTo(Math.max(65, shade.board.thicknessMm + heightMm + 25), 6);
      }),
    );
  });

  test("lists each cord, each place on the board and each piece", () => {
    fc.assert(
      fc.property(anyWish, (wish) => {
        const { made, shade } = planned(wish);
        const marks = wholeList(BOARD_LIST, made).rows.map((row) => row[2]);
        const count = (mark: string) => marks.filter((one) => one === mark).length;
        const { lift } = shade;
        const columns = shade.grid.columns.length;
        if (lift.kind === "cord-lock") {
          expect([count("screw eye"), count("lock, centre"), count("spool, middle")]).toEqual([
            columns,
            1,
            0,
          ]);
        } else if (lift.kind === "cleat") {
          // Each eye once, whether the last one is also that of a column or not.
          const shared = lift.turn.column === undefined ? 0 : 1;
          expect([count("screw eye"), count("screw eye and last eye"), count("last eye")]).toEqual([
            columns - shared,
            shared,
            1 - shared,
          ]);
          expect(count("lock, centre")).toBe(0);
        } else {
          expect([count("screw eye"), count("lock, centre")]).toEqual([0, 0]);
          expect(count("spool, middle")).toBe(columns);
          expect(count("tube support")).toBe(lift.supports.length);
          expect(count("drive, middle")).toBe(1);
        }
        const cords = wholeList(CORD_LIST, made);
        const cell = (row: (typeof cords.rows)[number], name: string) => row[cords.header.indexOf(name)];
        for (const row of cords.rows) {
          expect(cell(row, "tailMm") === "").toBe(lift.takeUp === "tube");
          expect(cell(row, "wrapsOnSpoolMm") === "").toBe(lift.takeUp !== "tube");
          const parts = ["riseMm", "alongBoardMm", "tailMm", "wrapsOnSpoolMm", "knotsMm"];
          const sum = parts.reduce((total, name) => total + Number(cell(row, name) || 0), 0);
          expect(Number(cell(row, "cutMm"))).toBeGreaterThanOrEqual(sum - 0.01);
          expect(Number(cell(row, "cutMm"))).toBeLessThanOrEqual(sum + 1.01);
        }
        const pieces = wholeList(CUT_LIST, made).rows.map((row) => row[2]);
        expect(pieces.includes("Lift tube")).toBe(lift.takeUp === "tube");
        expect(pieces.includes("Cord sleeve")).toBe(wish.rearCords === "enclosed");
        expect(pieces.includes("Woven sleeve")).toBe(wish.rearCords === "ring-locked");
      }),
    );
  });
});

/** What is bought for a lift, by the beginnings of the lines' ids. */
function bought({ cost }: ShadePlan, start: string): number {
  return cost.shopping.filter(({ id }) => id.startsWith(start)).reduce((sum, line) => sum + line.quantity, 0);
}

describe("shopping", () => {
  test("a lock takes eyes, a lock, a cleat and a connector, and nothing of a tube", () => {
    const { shade } = planned({ kind: "cord-lock" });
    for (const start of ["eye-", "lock-lock", "cleat", "connector"])
      expect(bought(shade, start)).toBeGreaterThan(0);
    for (const start of ["tube-", "spool-", "drive-", "loop-"]) expect(bought(shade, start)).toBe(0);
  });

  test.each(TUBES)("%s takes a tube, a spool for each column and a drive, and nothing of a lock", (kind) => {
    const { shade } = planned({ kind });
    expect(bought(shade, "tube-")).toBe(1);
    expect(bought(shade, "spool-")).toBe(shade.grid.columns.length);
    expect(bought(shade, "drive-")).toBe(1);
    for (const start of ["eye-", "lock-", "cleat", "connector"]) expect(bought(shade, start)).toBe(0);
    expect(bought(shade, "loop-drive") + bought(shade, "loop-loop")).toBe(kind === "tube-loop" ? 1 : 0);
    expect(bought(shade, "loop-tensioner")).toBe(kind === "tube-loop" ? 1 : 0);
    expect(bought(shade, "wand-")).toBe(kind === "tube-wand" ? 1 : 0);
  });

  test("woven sleeves are bought by the length, with a grip for every ring", () => {
    const { shade } = planned({ kind: "spring", rearCords: "ring-locked" });
    expect(bought(shade, "sleeve-grip")).toBe(shade.grid.rows.length * shade.grid.columns.length);
    expect(bought(shade, "woven-sleeve") * 1000).toBeGreaterThanOrEqual(
      shade.lift.wovenSleeves?.totalMm ?? 0,
    );
  });

  test("sewn sleeves weigh, and are sewn along both edges", () => {
    const open = planned({ kind: "spring", rearCords: "open" }).shade;
    const { shade } = planned({ kind: "spring", rearCords: "enclosed" });
    const sewn = ({ workings }: ShadePlan) => workings.find(({ id }) => id === "cost.sewn")?.value ?? 0;
    const { sleeves } = shade.cloth;
    if (sleeves === undefined) throw new Error("no sleeves");
    expect(sewn(shade) - sewn(open)).toBeCloseTo(2 * sleeves.count * sleeves.lengthMm, 6);
    // 140 g/m² of lining, from the catalogue.
    const sleevesKg = (sleeves.count * sleeves.widthMm * sleeves.lengthMm * 140) / 1e9;
    expect(shade.mass.totalKg - open.mass.totalKg).toBeCloseTo(sleevesKg, 9);
  });
});

const stepOf = ({ steps }: ShadePlan, id: string) => steps.find((step) => step.id === id);
const wordsOf = ({ steps, cautions }: ShadePlan) =>
  [
    ...steps.map(({ title, text, check, caution }) => [title, text, check, caution].join(" ")),
    ...cautions.map(({ text }) => text),
  ].join(" ");

describe("steps and cautions", () => {
  test.each(TUBES)("%s: nothing is said of a lock, a tail, a cleat or a connector to make", (kind) => {
    const { shade } = planned({ kind });
    const words = wordsOf(shade);
    expect(words).not.toMatch(/\b(?:thread the lock|cleat|connector|tail|tails)\b.{0,30}/i);
    expect(stepOf(shade, "string-onto-spools")?.text).toMatch(/3 turns/);
  });

  test.each([
    ["spring", "string-spring", /spring under tension/],
    ["spring", "hang-control", /spring under tension/],
    ["tube-loop", "hang-control", /no tensioner, no loop/],
    ["tube-wand", "hang-control", /Never tie a cord/],
    ["motor", "hang-control", /licensed electrician/],
  ] as const)("%s: the caution stands at the step %s", (kind, id, caution) => {
    expect(stepOf(planned({ kind }).shade, id)?.caution).toMatch(caution);
  });

  test("sleeves are cut, sewn on, closed over the cords and closed at the knots, in this order", () => {
    const { shade } = planned({ kind: "tube-loop", rearCords: "enclosed" });
    const order = [
      "cut-sleeves",
      "make-sleeves",
      "string-tie",
      "string-close-sleeves",
      "level-knots",
      "level-sleeves",
    ];
    const at = order.map((id) => shade.steps.findIndex((step) => step.id === id));
    expect(at.every((index) => index >= 0)).toBe(true);
    expect(at).toEqual([...at].sort((a, b) => a - b));
  });

  test("the bare cord is never fixed at every ring", () => {
    const { shade } = planned({ kind: "cord-lock", rearCords: "ring-locked" });
    expect(stepOf(shade, "string-tie")?.text).toMatch(/The cord itself is gripped nowhere/);
  });
});

describe("inside its opening", () => {
  test.each(TUBES)("%s: the screws go up behind the tube, where a driver passes", (kind) => {
    const { shade } = planned({ kind });
    if (shade.lift.takeUp !== "tube") throw new Error("invalid lift");
    const tubeFrom = shade.board.depthMm / 2 - shade.lift.tube.diameterMm / 2;
    expect(shade.board.screwsZMm).toBeCloseTo(tubeFrom / 2, 9);
    expect(stepOf(shade, "board-fixing")?.text).toContain("behind the tube to come");
  });
});
