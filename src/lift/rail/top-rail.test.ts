import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { plan, type ShadePlan } from "../../plan/index.ts";

const shadeOf = (making: object, rest: object = {}, job: object = {}): ShadePlan => {
  const [shade] = plan(
    jobWith(
      {
        opening: { widthsMm: [1200], heightsMm: [1500], sillAboveFloorMm: 900 },
        shade: { mount: "outside", making, ...rest },
      },
      { units: { system: "metric", ruler: "1 mm" }, ...job },
    ),
  ).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
};

/** Board and its cover, N: pine of 450 kg/m³. */
function boardOnlyN(board: ShadePlan["board"], mass: ShadePlan["mass"]): number {
  const { lengthMm, depthMm, thicknessMm } = board;
  return 9.80665 * (lengthMm * depthMm * thicknessMm * 450e-9 + mass.onBoardKg);
}

/** Turns along a path seen from below, rad. */
function bendsOf(path: readonly { xMm: number; zMm: number }[]): number {
  let sum = 0;
  for (let i = 2; i < path.length; i++) {
    const [a, b, c] = [path[i - 2], path[i - 1], path[i]];
    if (a === undefined || b === undefined || c === undefined) continue;
    const [into, out] = [Math.atan2(b.zMm - a.zMm, b.xMm - a.xMm), Math.atan2(c.zMm - b.zMm, c.xMm - b.xMm)];
    const turn = Math.abs(out - into);
    sum += Math.min(turn, 2 * Math.PI - turn);
  }
  return sum;
}

describe("a top that comes down", () => {
  test("by hand: run to the far end, drop, tail and knots", () => {
    const { lift, size, grid } = shadeOf({ fold: { topDropMm: 400 }, lift: { tailMm: 700, knotsMm: 100 } });
    const rail = lift.topRail;
    expect(rail?.side).toBe("left");
    for (const { xMm, lengthMm } of rail?.cords.slice(1) ?? []) {
      expectNear(lengthMm, xMm - (rail?.seat.xMm ?? 0) + 400 + 700 + 100, 1e-9);
    }
    expect(rail?.tailUpMm).toBe(1100);
    // A bay of at most 900 mm: two bays on a shade as wide as this, and both middle columns where none is in the middle.
    expect(size.finishedWidthMm).toBeGreaterThan(1000);
    expect(grid.columns).toHaveLength(6);
    expect(rail?.cords.map(({ column }) => column)).toEqual([1, 3, 4, 6]);
  });

  test("rail cords and lift cords carry all of it between them, with the top anywhere", () => {
    const {
      lift,
      cloth: _cloth,
      mass,
      board,
    } = shadeOf({
      fold: { topDropMm: 600 },
      board: { section: "board-1x4" },
    });
    const rail = lift.topRail;
    if (rail === undefined) throw new Error("no rail");
    // By hand: a steel bar of 19 × 3.2 mm, 7850 kg/m³, 12.7 mm shorter than 1200 mm.
    expectNear(rail.massKg, (1200 + 60 - 12.7) * 19.05 * 3.175 * 7850e-9, 0.06);
    const totalN = 9.80665 * (mass.totalKg + rail.massKg);
    expect(rail.heldN).toBe(rail.course[0]?.heldN);
    expectNear(rail.heldN, totalN, 1e-9);
    for (const { downMm, heldN } of rail.course.slice(1)) {
      // The hem, held at its lowest, stands as near to the rail as a shade risen by so much stands to its board.
      const { heights } = lift.course;
      const after = heights.findIndex(({ liftMm }) => liftMm >= downMm - 1e-9);
      const [a, b] = [heights[Math.max(0, after - 1)], heights[after]];
      if (a === undefined || b === undefined) throw new Error("no height");
      const share = b.liftMm > a.liftMm ? (downMm - a.liftMm) / (b.liftMm - a.liftMm) : 1;
      expectNear(heldN + a.heldN + share * (b.heldN - a.heldN), totalN, 1e-3 * totalN);
    }
    // All that pulls at the board with nobody at the cords: rail eyes, lift eyes, and the board's own weight.
    expectNear(board.loadN - Math.max(lift.pullN, rail.pullN) - totalN, boardOnlyN(board, mass), 1e-6);
  });

  test("two cords, by moments about one end; each turned a quarter and over its roller step by step", () => {
    const { lift } = shadeOf({
      fold: { topDropMm: 300 },
      board: { section: "board-1x4" },
      columns: { count: 2 },
    });
    const rail = lift.topRail;
    if (rail === undefined) throw new Error("no rail");
    expect(rail.cords).toHaveLength(2);
    for (const { loadN } of rail.cords) expectNear(loadN, rail.heldN / 2, 1e-9);
    // The cord above its own lock bends by next to nothing after its quarter turn: dT = μ·T·dθ in small steps.
    const own = rail.cords.find(({ path }) => path.length <= 3);
    let pullN = rail.heldN / 2;
    const steps = 200_000;
    const bends = bendsOf(own?.path ?? []) + Math.PI / 2;
    for (let i = 0; i < steps; i++) pullN += 0.25 * pullN * (bends / steps);
    expectNear(own?.pullN ?? 0, pullN / 0.917, 1e-3);
  });

  test("the further it comes down, the less hangs on its cords, but for each row that stays behind", () => {
    const course = shadeOf({ fold: { topDropMm: 700 } }).lift.topRail?.course ?? [];
    for (let i = 1; i < course.length; i++) {
      expect(course[i]?.heldN).toBeLessThanOrEqual((course[i - 1]?.heldN ?? 0) + 1e-9);
    }
    for (const { heldN, pullN, holdN } of course) {
      expect(pullN).toBeGreaterThan(heldN);
      expect(holdN).toBeLessThan(heldN);
    }
  });

  test("on a shallow board its rig has no room, and a deeper one answers that", () => {
    const finding = shadeOf({ fold: { topDropMm: 400 } }).findings.find(
      ({ id }) => id === "rig.rail-no-room",
    );
    expect(finding?.severity).toBe("stop");
    expect(finding?.remedies.map(({ patch }) => JSON.stringify(patch)).join(" ")).toContain("board-1x");
    const deep = shadeOf({ fold: { topDropMm: 400 }, board: { section: "board-1x4" } });
    expect(deep.findings.map(({ id }) => id)).not.toContain("rig.rail-no-room");
  });

  test("a cord that breaks too soon for the whole shade is refused", () => {
    const weak = (breakingN?: number) =>
      shadeOf(
        { fold: { topDropMm: 400 }, lift: { cord: "thread" } },
        {},
        {
          hardware: { cords: [{ id: "thread", name: "Thread", diameterMm: 1.4, breakingN }] },
        },
      ).findings.map(({ id }) => id);
    expect(weak(60)).toContain("rig.rail-cord-too-weak");
    expect(weak(5000)).not.toContain("rig.rail-cord-too-weak");
    expect(weak()).toContain("rig.rail-strength-unknown");
    expect(weak(60)).not.toContain("rig.rail-strength-unknown");
  });

  test("it is bought: eyes, lock, rail, and its cord with the rest", () => {
    const lines = (making: object) => shadeOf(making).cost.shopping;
    const ids = lines({ fold: { topDropMm: 400 } }).map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(["rail-eyes", "rail-lock", "top-rail"]));
    const cord = (making: object) => lines(making).find(({ id }) => id === "cord-cord-1-4")?.quantity ?? 0;
    expect(cord({ fold: { topDropMm: 400 } })).toBeGreaterThan(cord({}));
  });

  test("cord between board and rail counts in the review, even where the cloth encloses its own", () => {
    const careful = { lift: { kind: "motor", rearCords: "enclosed" } };
    const job = { place: "ca", purpose: "for-sale" };
    const without = shadeOf(careful, {}, job).safety;
    const withRail = shadeOf({ ...careful, fold: { topDropMm: 400 } }, {}, job).safety;
    expect(without.counts.failed).toBe(0);
    expect(withRail.counts.failed).toBeGreaterThan(0);
    expect(withRail.stamp).toBe(true);
  });

  test("the further it comes down, the more cord is bare: no rule that failed is mended by it", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 500 }), (drop, more) => {
        const failed = (topDropMm: number) =>
          shadeOf({ fold: { topDropMm } }, {}, { place: "ca", purpose: "gift" }).safety.counts.failed;
        expect(failed(drop + more)).toBeGreaterThanOrEqual(failed(drop));
      }),
      { numRuns: 15 },
    );
  });

  test.each(["austrian", "hobbled", "relaxed"])("not for a %s shade, with the reason", (style) => {
    const shade = shadeOf({ fold: { topDropMm: 300 } }, { style });
    expect(shade.lift.topRail).toBeUndefined();
    expect(shade.findings.map(({ id }) => id)).toContain("rig.top-not-for-style");
  });

  test("its steps say what to cut and tie", () => {
    const { steps, lift } = shadeOf({ fold: { topDropMm: 300 } });
    const tie = steps.find(({ id }) => id === "string-rail-cords");
    expect(tie?.text).toContain(`${lift.topRail?.cords[0]?.cutMm}`);
    expect(shadeOf({}).steps.map(({ id }) => id)).not.toContain("string-rail-cords");
  });
});
