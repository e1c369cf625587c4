import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boardLoads, withSomeoneOnHem } from "../../src/board/board-loads.ts";
import type { JobInput, Making } from "../../src/job/index.ts";
import { plan, type ShadePlan } from "../../src/plan/index.ts";
import { cordGeometry } from "../../src/safety/review/lift-geometry.ts";
import { hangingAt } from "../../src/safety/review/quantities/pull-cords.ts";
import type { CleatLift } from "../../src/shade-plan/index.ts";
import { GRAVITY } from "../../src/units/index.ts";
import { jobWith, resolvedWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

interface Asked {
  widthMm?: number;
  heightMm?: number;
  sillMm?: number | undefined;
  head?: { kind: "angled" | "arched"; fallMm: number };
  lift?: NonNullable<Making["lift"]>;
  columns?: NonNullable<Making["columns"]>;
  job?: Partial<JobInput>;
}

function planned({
  widthMm = 900,
  heightMm = 1500,
  sillMm = 900,
  head,
  lift = {},
  columns,
  job = {},
}: Asked): ShadePlan & { lift: CleatLift } {
  const made = plan(
    jobWith(
      {
        opening: {
          widthsMm: [widthMm],
          heightsMm: [heightMm],
          ...(sillMm === undefined ? {} : { sillAboveFloorMm: sillMm }),
          ...(head === undefined ? {} : { head: head }),
        },
        shade: {
          mount: "to-size",
          making: { lift: { kind: "cleat", ...lift }, ...(columns === undefined ? {} : { columns }) },
        },
      },
      { units: { system: "metric", ruler: "1 mm" }, ...job },
    ),
  );
  const [shade] = made.shades;
  if (shade === undefined || shade.lift.kind !== "cleat") throw new Error("invalid test job: no cleat");
  return shade as ShadePlan & { lift: CleatLift };
}

const ids = ({ findings }: ShadePlan) => findings.map(({ id }) => id);

/** T2/T1 over a half turn at μ = 0.25: the square of 1.48097 over a quarter, Morton & Hearle, eq. 25.2. */
const HALF_TURN = 1.48097 ** 2;

describe("pull and hold without a lock", () => {
  test("each cord turns by a half over its own eye and the last: Euler–Eytelwein in closed form", () => {
    const { lift } = planned({});
    expect(lift.turn.column).toBeUndefined();
    for (const { loadN, pullN, eyesRad, turnRad } of lift.cords) {
      expectNear(eyesRad, Math.PI / 2, 1e-9);
      expectNear(turnRad, Math.PI / 2, 1e-9);
      expectNear(pullN / loadN, HALF_TURN, 2e-5);
    }
    // What the cleat bears: the weight on the cords, less what friction in both eyes keeps.
    expectNear(lift.holdN, lift.heldN / HALF_TURN, 1e-4 * lift.heldN);
  });

  test("a pulley as the last eye, of which 89 % passes on at a quarter turn", () => {
    const { lift } = planned({ lift: { turnEye: "pulley-16" }, job: { hardware: { eyes: [PULLEY] } } });
    for (const { loadN, pullN } of lift.cords) expectNear(pullN / loadN, 1.48097 / 0.89, 2e-5);
  });

  test("whatever the head, on either hand: a cord that goes up and comes down has turned about", () => {
    fc.assert(
      fc.property(
        fc.record({
          widthMm: fc.integer({ min: 300, max: 2400 }),
          head: fc.option(
            fc.record({
              kind: fc.constantFrom("angled" as const, "arched" as const),
              fallMm: fc.integer({ min: 0, max: 250 }),
            }),
            { nil: undefined },
          ),
          controlSide: fc.constantFrom("left" as const, "right" as const),
          edgeInsetMm: fc.integer({ min: 8, max: 70 }),
        }),
        ({ widthMm, head, controlSide, edgeInsetMm }) => {
          const asked = { widthMm, lift: { controlSide }, columns: { edgeInsetMm } };
          const { lift } = planned({ ...asked, ...(head === undefined ? {} : { head }) });
          for (const { eyesRad, turnRad, loadN, pullN } of lift.cords) {
            expectNear(eyesRad + turnRad, Math.PI, 1e-9);
            if (loadN > 0) expectNear(pullN / loadN, Math.exp(0.25 * Math.PI), 1e-9);
          }
        },
      ),
    );
  });
});

const PULLEY = {
  id: "pulley-16",
  name: "Small pulley",
  outsideDiameterMm: 16,
  pulleyShare: 0.89,
  demo: true,
} as const;

describe("lengths", () => {
  test("a shade 900 by 1500 on a board 894 long, worked on the right: by hand", () => {
    const shade = planned({ columns: { edgeInsetMm: 50, count: 3 }, lift: { tailMm: 800, knotsMm: 150 } });
    const { lift, grid, board } = shade;
    // The last eye of 12 mm: 6 mm of wood and half an eye in from the end of the board.
    const turnX = board.leftMm + board.lengthMm - 6 - 6;
    expectNear(lift.turn.xMm, turnX, 1e-6);
    const firstRow = grid.rows[0]?.fromHemMm ?? Number.NaN;
    // Columns at 50, 450 and 850.
    const byHand = [50, 450, 850].map((x) => 1500 - firstRow + (turnX - x) + 800 + 150);
    lift.cords.forEach((cord, i) => {
      expectNear(cord.lengthMm, byHand[i] ?? Number.NaN, 1e-6);
    });
  });

  test("where the outer eye leaves no room for another it is the last, and its own cord turns about over it", () => {
    const { lift, board } = planned({ columns: { edgeInsetMm: 20, count: 3 } });
    expect(lift.turn.column).toBe(3);
    expectNear(lift.turn.xMm, 880, 1e-9);
    expect(lift.cords[2]).toMatchObject({ runMm: 0, eyesRad: 0 });
    expect(board.eyes).toHaveLength(3);
  });

  test("lowered the cords go to the cleat and once round it; raised they have grown by the travel", () => {
    const { lift, grid, board } = planned({});
    // Top line 900 + 1500 above the floor; below it the board and an eye of 12 mm; the cleat at 1600.
    const down = 2400 - board.thicknessMm - 12 - 1600;
    expectNear(lift.toCleatMm ?? Number.NaN, down, 1e-9);
    expectNear(lift.tailLoweredMm, down + 250, 1e-9);
    expectNear(lift.tailRaisedMm, down + 250 + grid.travelMm, 1e-9);
    expectNear(lift.windMm ?? Number.NaN, 250 + grid.travelMm, 1e-9);
    expect(lift.figureEights).toBe(Math.floor((250 + grid.travelMm) / 250));
  });
});

describe("the board", () => {
  test("hangs on the cords twice: the weight at the eyes and the hand at the last one", () => {
    const shade = planned({});
    const { lift, board, mass, size } = shade;
    const loads = boardLoads({ size, board, lift }, 0, mass);
    const at = (what: string) =>
      loads.points.filter((one) => one.what === what).reduce((sum, { loadN }) => sum + loadN, 0);
    expectNear(at("eye"), lift.heldN, 1e-9 * lift.heldN);
    expectNear(at("last-eye"), lift.pullN, 1e-9 * lift.pullN);
    // A child on the hem, cords fast at both ends: without friction as much pulls down at the last eye.
    const childN = 12 * GRAVITY;
    const hung = withSomeoneOnHem(loads, childN).points.reduce((sum, { loadN }) => sum + loadN, 0);
    expectNear(hung, 2 * (lift.heldN + childN), 1e-9 * hung);
    // And its fixings hold it up, with the board and what the heading carries: statics.
    const reactions = board.strength?.reactionsN.reduce((sum, one) => sum + one, 0) ?? Number.NaN;
    expect(board.strength?.hand).toBe("child");
    const ofBoardN = board.loadN - mass.totalKg * GRAVITY - lift.pullN;
    expectNear(reactions, ofBoardN + mass.totalKg * GRAVITY - lift.heldN + hung, 1e-6 * reactions);
  });

  test("over a lock the same board carries much less", () => {
    const made = plan(
      jobWith({
        opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
        shade: { mount: "to-size", making: { lift: { kind: "cord-lock" } } },
      }),
    );
    const sum = (shade: ShadePlan | undefined) =>
      shade?.board.strength?.reactionsN.reduce((total, one) => total + one, 0) ?? 0;
    expect(sum(planned({}))).toBeGreaterThan(1.6 * sum(made.shades[0]));
  });
});

describe("what is said of it", () => {
  test("the hold, on every shade; a cord too short for its cleat, with the length that does", () => {
    const shade = planned({ lift: { tailMm: 700 } });
    expect(ids(shade)).toContain("lift.held-by-cleat");
    const short = shade.findings.find(({ id }) => id === "rig.tail-short-of-cleat");
    expect(short?.severity).toBe("fix");
    expect(short?.remedies).toHaveLength(1);
    expect(ids(planned({}))).not.toContain("rig.tail-short-of-cleat");
  });

  test("a window too low for a cleat out of reach", () => {
    expect(ids(planned({ heightMm: 900, sillMm: 600 }))).toContain("rig.cleat-above-eye");
    expect(ids(planned({ heightMm: 900, sillMm: 800 }))).not.toContain("rig.cleat-above-eye");
  });

  test("more cords than go through the last eye", () => {
    const thick = { id: "cord-3", name: "Thick cord", diameterMm: 3, demo: true };
    const asked = { lift: { cord: "cord-3" }, job: { hardware: { cords: [thick] } } };
    // n cords of 3 mm fill 3·√(n/0.7); an eye of 12 mm opens 7.2: four do, five do not.
    expect(ids(planned({ ...asked, columns: { count: 4 } }))).not.toContain("rig.crowded-eye");
    expect(ids(planned({ ...asked, columns: { count: 5 } }))).toContain("rig.crowded-eye");
  });
});

test("worked on the other hand it is the mirror image", () => {
  fc.assert(
    fc.property(fc.integer({ min: 300, max: 2600 }), fc.integer({ min: 10, max: 90 }), (widthMm, inset) => {
      const [right, left] = (["right", "left"] as const).map((controlSide) =>
        planned({ widthMm, lift: { controlSide }, columns: { edgeInsetMm: inset } }),
      );
      if (right === undefined || left === undefined) throw new Error("invalid test");
      expectNear(left.lift.turn.xMm, widthMm - right.lift.turn.xMm, 1e-6);
      const turned = [...left.lift.cords].reverse();
      right.lift.cords.forEach((cord, i) => {
        expectNear(turned[i]?.lengthMm ?? Number.NaN, cord.lengthMm, 1e-6);
        expectNear(turned[i]?.pullN ?? Number.NaN, cord.pullN, 1e-6);
      });
    }),
  );
});

test("the review hangs the cords from the last eye, at every height, and lets none of them count as held", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 20 }),
      fc.integer({ min: 500, max: 1500 }),
      (twentieths, tailMm) => {
        const shade = planned({ lift: { tailMm } });
        const { size, grid, form, mass, lift } = shade;
        const resolved = resolvedWith({
          opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
          shade: { mount: "to-size", making: { lift: { kind: "cleat", tailMm } } },
        });
        const geometry = cordGeometry({ shade: resolved, size, grid, form, mass }, lift);
        const [pull] = geometry.pulls;
        expect(pull).toMatchObject({ from: "last eye", count: lift.cords.length });
        const raise = twentieths / 20;
        expectNear(hangingAt(geometry, raise), tailMm + raise * grid.travelMm, 1e-6);
        expectNear(pull?.exitBelowTopMm ?? 0, shade.board.thicknessMm + lift.turn.diameterMm, 1e-9);
        expect(geometry.rear?.boardSpansMm).toHaveLength(lift.eyes.length);
      },
    ),
  );
});

test("for sale where free cords are ruled out it fails by their law, as a lock does", () => {
  const { safety } = planned({ job: { place: "us", purpose: "for-sale" } });
  expect(safety.counts.failed).toBeGreaterThan(0);
});
