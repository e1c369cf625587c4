import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { afterRemedy } from "../../test/rig-inputs.ts";
import type { ShadePlan } from "../plan/index.ts";
import { plan } from "../plan/index.ts";
import { forceText } from "../units/index.ts";
import { type BoardLoads, boardLoads, endsOnCleat, withHand, withSomeoneOnHem } from "./board-loads.ts";

type Board = Record<string, unknown>;

const job = (board: Board = {}, mount: "outside" | "inside" = "outside", widthMm = 1200) =>
  jobWith(
    {
      opening: { widthsMm: [widthMm], heightsMm: [1500] },
      shade: { mount, making: { board, lift: { kind: "cord-lock" } } },
    },
    { units: { system: "metric", ruler: "1 mm" } },
  );
const shadeOf = (...args: Parameters<typeof job>): ShadePlan => {
  const shade = plan(job(...args)).shades[0];
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return shade;
};
const strengthOf = (...args: Parameters<typeof job>) => {
  const { strength } = shadeOf(...args).board;
  if (strength === undefined) throw new Error("invalid test job: one fixing");
  return strength;
};
const idsOf = (...args: Parameters<typeof job>) => shadeOf(...args).findings.map(({ id }) => id);

describe("the board as a beam", () => {
  // 12 kg at standard gravity (NIST SP 811): 117.68 N, more than a tug at any plain shade.
  test("its reactions carry all that pulls, and a child of 12 kg on the cord", () => {
    const { size, board, lift, mass } = shadeOf();
    const loads = boardLoads({ size, board, lift }, 0, mass);
    const sum = board.strength?.reactionsN.reduce((all, one) => all + one, 0) ?? 0;
    const boardKg = (board.lengthMm * board.depthMm * board.thicknessMm * 450) / 1e9;
    const points = loads.points.reduce(
      (all, { what, loadN }) => all + (what === "lock" ? Math.max(1.5 * loadN, 70, 12 * 9.80665) : loadN),
      0,
    );
    expectNear(sum, loads.evenN + points + (boardKg + mass.onBoardKg) * 9.80665, 1e-6);
  });

  // 5wL⁴/384EI, AWC Design Aid 6, figure 1: trade table “pine 3/4 × 1.5 flat, 8 lb, unsupported: 72 in 0.61 in”
  // is of that order; held at both ends alone a long board must bend more than it may.
  test("a long board on two fixings bends too much, and each remedy cures it", () => {
    const long = job({ bracketSpacingMm: 3000 }, "outside", 2300);
    const finding = plan(long).shades[0]?.findings.find(({ id }) => id === "board.bends");
    expect(finding?.severity).toBe("fix");
    expect(finding?.remedies.length).toBeGreaterThan(0);
    for (const remedy of finding?.remedies ?? []) {
      const before = plan(long).shades[0]?.board.strength?.deflectionMm ?? 0;
      const after = plan(afterRemedy(long, remedy)).shades[0]?.board.strength?.deflectionMm ?? 0;
      expect(after).toBeLessThan(before);
    }
  });

  test("a stiffer wood never bends more; more brackets never bend more", () => {
    const pine = strengthOf({ wood: "eastern-white-pine" }).deflectionMm;
    const fir = strengthOf({ wood: "douglas-fir-coast" }).deflectionMm;
    // Wood Handbook, table 5-3a: 8,500 and 13,400 MPa; deflection goes with 1/E.
    expectNear(pine / fir, 13_400 / 8_500, 1e-9);
    expect(strengthOf({ bracketSpacingMm: 300 }).deflectionMm).toBeLessThan(
      strengthOf({ bracketSpacingMm: 900 }).deflectionMm,
    );
  });
});

/** Largest moment of a plank on two supports by plane statics: levers about them, then section by section, N·mm. */
function largestMoment({ fromMm, toMm, evenN, points, supportsMm }: BoardLoads): number {
  const [a = 0, b = 0] = supportsMm;
  const all = [{ atMm: (fromMm + toMm) / 2, loadN: evenN }, ...points];
  const rightN = all.reduce((sum, { atMm, loadN }) => sum + (loadN * (atMm - a)) / (b - a), 0);
  const leftN = all.reduce((sum, { loadN }) => sum + loadN, 0) - rightN;
  const forces = [...points, { atMm: a, loadN: -leftN }, { atMm: b, loadN: -rightN }];
  const moment = (x: number) =>
    forces.filter(({ atMm }) => atMm < x).reduce((sum, { atMm, loadN }) => sum - loadN * (x - atMm), 0) -
    ((evenN / (toMm - fromMm)) * (x - fromMm) ** 2) / 2;
  const places = Array.from({ length: 4001 }, (_, i) => fromMm + ((toMm - fromMm) * i) / 4000);
  return Math.max(...[...places, ...forces.map(({ atMm }) => atMm)].map((x) => Math.abs(moment(x))));
}

describe("the board of a top that comes down", () => {
  const railed = (widthMm: number, tops: { topDropMm: number; kind: "cord-lock" | "cleat" }) =>
    plan(
      jobWith(
        {
          opening: { widthsMm: [widthMm], heightsMm: [1500] },
          shade: {
            mount: "outside",
            making: {
              board: { bracketSpacingMm: 3000 },
              lift: { kind: tops.kind },
              fold: { topDropMm: tops.topDropMm },
            },
          },
        },
        { units: { system: "metric", ruler: "1 mm" } },
      ),
    ).shades[0];

  test("is bent by the worse of both hands, whichever of them works the screws harder (plane statics)", () => {
    const anyWidth = fc.integer({ min: 500, max: 2200 });
    const anyKind = fc.constantFrom("cord-lock" as const, "cleat" as const);
    fc.assert(
      fc.property(anyWidth, fc.integer({ min: 100, max: 900 }), anyKind, (widthMm, topDropMm, kind) => {
        const shade = railed(widthMm, { topDropMm, kind });
        const { strength } = shade?.board ?? {};
        const rail = shade?.lift.topRail;
        if (shade === undefined || strength === undefined || rail === undefined) throw new Error("no rail");
        fc.pre(shade.board.brackets.length === 2);
        const { size, board, lift, mass } = shade;
        const boardKg = (board.lengthMm * board.depthMm * board.thicknessMm * 450) / 1e9 + mass.onBoardKg;
        const loads = (["lift", "rail"] as const).map((hand) =>
          boardLoads({ size, board, lift }, boardKg, mass, hand),
        );
        const handN = Math.max(1.5 * lift.pullN, 1.5 * rail.pullN, 70, 12 * 9.80665);
        expectNear(strength.handN, handN, 1e-9);
        const hung = loads.map((one) =>
          strength.hand === "child" && kind === "cleat" && endsOnCleat(one)
            ? withSomeoneOnHem(one, handN)
            : withHand(one, handN),
        );
        const modulus = (board.depthMm * board.thicknessMm ** 2) / 6;
        const stress = Math.max(...hung.map((one) => largestMoment(one) / modulus));
        expectNear(strength.stressNPerMm2, stress, 1e-4 * stress);
      }),
      { numRuns: 60 },
    );
  });
});

describe("a child that hangs on it", () => {
  const finding = (id: string, board: Board) => shadeOf(board).findings.find((one) => one.id === id);

  test("by hand: two anchors of a bracket, the lever rule at the lock and the bracket’s prying", () => {
    const { strength } = shadeOf({ substrate: "hollow-wall", bracketLegMm: 50 }).board;
    expect(strength?.hand).toBe("child");
    expectNear(strength?.handN ?? 0, 12 * 9.80665, 1e-9);
    const { tugged, pullN = 0, shearN = 0 } = strength ?? {};
    // Prying is in both: screws 10 and 40 mm up a leg of 50 mm, the load 38.1 mm out, T = M z / Σz²; the load is 2·V.
    expectNear(pullN / (2 * shearN), (38.1 * 40) / (10 ** 2 + 40 ** 2), 1e-9);
    expect(tugged?.pullN).toBeLessThan(pullN);
  });

  test("an anchor that would do for a tug fails, and is told so with the child and the prying", () => {
    const { tugged, pullN, shearN } = strengthOf({ substrate: "hollow-wall" });
    const forTug = Math.ceil(4 * Math.hypot(tugged.pullN, tugged.shearN));
    const failed = finding("board.rating-too-low", { substrate: "hollow-wall", fixingRatedN: forTug });
    expect(failed?.severity).toBe("stop");
    expect(failed?.text).toMatch(/child of 12 kg.*prying/);
    expect(finding("board.hollow-wall", { substrate: "hollow-wall" })?.text).toContain(
      forceText(4 * Math.hypot(pullN, shearN), { system: "metric", ruler: "1 mm" }),
    );
  });

  test.each(["unknown", "masonry", "hollow-wall"] as const)("is told of a wall that is %s", (substrate) => {
    const told = shadeOf({ substrate }).findings.filter(({ text }) => text.includes("child of 12 kg"));
    expect(told.map(({ id }) => id)).toContain("board.local-codes");
    expect(told.length).toBeGreaterThan(1);
  });
});

describe("what holds it", () => {
  test("by hand: a screw up into pine of G 0.35, eq. 8-10 with a factor of five", () => {
    const strength = strengthOf({ substrate: "timber", wallWood: "engelmann-spruce" }, "inside");
    const ultimateN = 108.25 * 0.35 ** 2 * 4.17 * (7 * 4.17);
    expectNear(strength.screwShare ?? 0, (strength.pullN * 5) / ultimateN, 1e-9);
    expect(strength.shearN).toBe(0);
  });

  test("by hand: the upper screw of a bracket, T = M z / Σz²", () => {
    const strength = strengthOf({ bracketLegMm: 60 });
    const worstN = Math.max(...strength.reactionsN);
    expectNear(strength.pullN, (worstN * 38.1 * 50) / (10 ** 2 + 50 ** 2), 1e-6);
    expectNear(strength.shearN, worstN / 2, 1e-9);
  });

  test("a longer leg never pulls harder at its screw", () => {
    fc.assert(
      fc.property(fc.integer({ min: 25, max: 200 }), fc.integer({ min: 1, max: 100 }), (leg, more) => {
        const pull = (bracketLegMm: number) => strengthOf({ bracketLegMm }).pullN;
        expect(pull(leg + more)).toBeLessThanOrEqual(pull(leg) * (1 + 1e-9));
      }),
      { numRuns: 20 },
    );
  });

  test("the maker's rating decides in masonry and hollow walls: below, and well above", () => {
    expect(idsOf({ substrate: "masonry", fixingRatedN: 1 })).toContain("board.rating-too-low");
    expect(idsOf({ substrate: "masonry", fixingRatedN: 5000 })).not.toContain("board.rating-too-low");
    const { pullN, shearN } = strengthOf({ substrate: "hollow-wall" });
    const onOne = Math.hypot(pullN, shearN);
    expect(idsOf({ substrate: "hollow-wall", fixingRatedN: Math.ceil(4 * onOne) })).not.toContain(
      "board.rating-too-low",
    );
    expect(idsOf({ substrate: "hollow-wall", fixingRatedN: Math.floor(3.9 * onOne) })).toContain(
      "board.rating-too-low",
    );
    expect(idsOf({ substrate: "hollow-wall" })).toContain("board.hollow-wall");
  });
});
