import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { bestOf, type Solved } from "../solve/outcome.ts";
import { type FoldShape, type HangingFold, hangFold, hangFolds } from "./hanging-fold.ts";
import { limpFold } from "./limp-fold.ts";
import { weightlessFold } from "./weightless.ts";

const DEG = Math.PI / 180;

/** In units of the half arc and of the rigidity, as the tables are. */
const unit = (weight: number, gap: number): HangingFold => ({
  arcMm: 2,
  gapMm: gap,
  weightNPerMm2: weight,
  rigidityNmm: 1,
});

function converged(solved: Solved<FoldShape>): FoldShape {
  if (solved.kind !== "converged") throw new Error(`not converged, residual ${solved.residual}`);
  return solved.value;
}

const rows = casesOf("hanging_fold_pinned");

describe("fold between two hinges", () => {
  test.each(rows)("%s", (_name, { inputs, outputs }) => {
    const weight = given(inputs, "lambda=w*a^3/B");
    const found = converged(hangFold(unit(weight, 2 * given(inputs, "d/(2a)"))));
    const near = (value: number, name: string, tol: number) =>
      expectNear(value, given(outputs, name), tol, name);
    near(found.depthMm, "xmax/a", 1e-6);
    near(found.depthAtMm, "s_at_xmax/a", 2e-6);
    near(found.behindMm, "xmin/a", 1e-6);
    near(found.droopMm, "droop_below_lower_pin/a", 1e-6);
    near((found.slopeRad[0] ?? Number.NaN) / DEG, "theta_top_deg", 2e-6 / DEG);
    near((found.slopeRad.at(-1) ?? Number.NaN) / DEG, "theta_bottom_deg", 2e-6 / DEG);
    const force = 1 + Math.abs(found.upAtTopNPerMm);
    near(found.backwardAtTopNPerMm, "H*a^2/B", 2e-6 * force);
    near(found.upAtTopNPerMm, "V0*a^2/B (upward force from top pin)", 2e-6 * force);
    near(found.upAtBottomNPerMm, "upward force from bottom pin *a^2/B", 2e-6 * force);
  });

  test.each(casesOf("hanging_fold_profile"))("%s", (_name, { outputs }) => {
    const found = converged(hangFold(unit(30, 1)));
    const places = Object.values(outputs) as [number, number, number, number][];
    expect(places.length).toBe(9);
    for (const [s, x, y, slope] of places) {
      const node = Math.round((s / 2) * (found.xMm.length - 1));
      expectNear(found.xMm[node] ?? Number.NaN, x, 1e-6);
      expectNear(found.yMm[node] ?? Number.NaN, y, 1e-6);
      expectNear(found.slopeRad[node] ?? Number.NaN, slope * DEG, 2e-6);
    }
  });

  test.each(casesOf("hanging_fold_dimensional"))("%s", (_name, { inputs, outputs }) => {
    const found = converged(
      hangFold({
        arcMm: 2000 * given(inputs, "a_m"),
        gapMm: 1000 * given(inputs, "d_m"),
        weightNPerMm2: given(outputs, "w_N_m2") * 1e-6,
        rigidityNmm: given(outputs, "B_uNm") * 1e-3,
      }),
    );
    const near = (value: number, name: string) =>
      expectNear(value, given(outputs, name), 1e-5 * Math.abs(given(outputs, name)) + 1e-6, name);
    near(found.depthMm, "xmax_mm");
    near(found.droopMm, "droop_mm");
    near(found.behindMm, "xmin_mm");
    near(1000 * found.upAtTopNPerMm, "Ftop_up_N_per_m");
    near(1000 * found.upAtBottomNPerMm, "Fbot_up_N_per_m");
    near(1000 * found.backwardAtTopNPerMm, "H_N_per_m");
  });

  test("moment about the hinges and the first integral hold to 1e-10, extrapolated from three meshes", () => {
    for (const [weight, gap] of [
      [3, 1],
      [10, 0.5],
      [30, 1.5],
    ] as const) {
      const misses = [100, 200, 400].map((nodes) => invariantsOf(weight, gap, nodes));
      for (const k of [0, 1]) {
        const [coarse = 0, middle = 0, fine = 0] = misses.map((miss) => miss[k] ?? Number.NaN);
        // Fourth order: each halving takes a sixteenth, and two rounds of Richardson leave the rounding.
        expectNear(coarse / middle, 16, 3);
        const [first, second] = [(16 * middle - coarse) / 15, (16 * fine - middle) / 15];
        expectNear((64 * second - first) / 63, 0, 1e-10 * weight, `${weight} ${gap} ${k}`);
      }
    }
  });

  test("without weight the closed form (Timoshenko & Gere §2.7): a second route at one limit", () => {
    for (const gap of [1.8, 1.5, 1, 0.5, 0.2]) {
      const found = converged(hangFold(unit(0, gap)));
      const exact = weightlessFold(gap);
      expectNear(found.depthMm, exact.depth, 1e-7);
      expectNear(found.slopeRad[0] ?? Number.NaN, exact.endSlopeRad, 1e-7);
      expectNear(found.upAtTopNPerMm, -exact.thrust, 1e-6);
    }
  });

  test("as weight wins, droop and loads come to those of limp cloth: a second route at the other limit", () => {
    for (const gap of [1, 0.5, 0.2]) {
      const off = [100, 1000, 5000].map((weight) => {
        const found = converged(hangFold(unit(weight, gap), 320));
        const limp = limpFold(2, gap, weight);
        expect(found.droopMm).toBeLessThan(limp.droopMm);
        return [
          limp.droopMm - found.droopMm,
          Math.abs(found.upAtBottomNPerMm / limp.upAtBottomNPerMm - 1),
          found.depthMm,
        ];
      });
      for (const k of [0, 1, 2]) {
        const list = off.map((row) => row[k] ?? Number.NaN);
        expect([...list].sort((a, b) => b - a)).toEqual(list);
      }
      expectNear(off[2]?.[1] ?? Number.NaN, 0, 1e-3);
    }
  });

  test("energy against force: what raising the lower hinge costs is what it pushes with", () => {
    for (const [weight, gap] of [
      [10, 1],
      [72, 0.3],
      [0, 1.2],
    ] as const) {
      const [less, middle, more] = [gap - 1e-3, gap, gap + 1e-3].map((d) =>
        converged(hangFold(unit(weight, d), 320)),
      );
      if (!less || !middle || !more) throw new Error("three shapes");
      // Heights count from the upper hinge, so the gap shrinks as the lower one goes up.
      expectNear(
        (energyOf(less, weight) - energyOf(more, weight)) / 2e-3,
        middle.upAtBottomNPerMm,
        1e-4 * (1 + weight),
      );
    }
  });
});

/** How far the two exact balances of the strip are from holding: first integral, then the moment about a hinge. */
function invariantsOf(weight: number, gap: number, nodes: number): [number, number] {
  const {
    slopeRad,
    xMm,
    upAtTopNPerMm: up,
    backwardAtTopNPerMm: side,
  } = converged(hangFold(unit(weight, gap), nodes));
  const [top, bottom] = [slopeRad[0] ?? Number.NaN, slopeRad.at(-1) ?? Number.NaN];
  const first =
    up * Math.cos(top) +
    side * Math.sin(top) -
    (up - 2 * weight) * Math.cos(bottom) -
    side * Math.sin(bottom) -
    weight * gap;
  // Trapezoid with the end correction h²/12 (x′(0) − x′(2)), since x is not level at the hinges.
  const step = 2 / nodes;
  const area =
    step * xMm.reduce((sum, x) => sum + x, 0) + (step ** 2 / 12) * (Math.sin(top) - Math.sin(bottom));
  return [first, weight * area - side * gap];
}

/** Bending energy ½∫θ′² less what the weight gave up, by central differences of what is drawn. */
function energyOf({ slopeRad, yMm }: FoldShape, weight: number): number {
  const step = 2 / (slopeRad.length - 1);
  let energy = 0;
  for (let i = 0; i + 1 < slopeRad.length; i++) {
    const [a, b] = [slopeRad[i] ?? 0, slopeRad[i + 1] ?? 0];
    energy += (b - a) ** 2 / (2 * step) - (weight * step * ((yMm[i] ?? 0) + (yMm[i + 1] ?? 0))) / 2;
  }
  return energy;
}

describe("a whole raise", () => {
  const cloth = { arcMm: 250, weightNPerMm2: 2.4516625e-6, rigidityNmm: 0.0661948875 };
  const gaps = Array.from({ length: 40 }, (_, i) => 245 - 6 * i);

  test("each height is what it is from nothing", () => {
    const all = hangFolds(cloth, gaps);
    for (const i of [0, 7, 20, 33, 39]) {
      const alone = converged(hangFold({ ...cloth, gapMm: gaps[i] ?? 0 }));
      const one = all[i];
      if (!one) throw new Error("a height is missing");
      expectNear(converged(one).depthMm, alone.depthMm, 1e-5);
      expectNear(converged(one).droopMm, alone.droopMm, 1e-5);
    }
  });

  test.each([0, 6])("a back %f mm behind: nothing passes it, all that touches pushes forward", (backMm) => {
    const free = hangFolds(cloth, gaps);
    const held = hangFolds({ ...cloth, paneMm: 60, backMm }, gaps);
    held.forEach((solved, i) => {
      const [one, without] = [converged(solved), free[i]];
      if (!without) throw new Error("a height is missing");
      expect(one.behindMm).toBeGreaterThan(-backMm - 0.3);
      if (converged(without).behindMm > -backMm - 0.05)
        expectNear(one.depthMm, converged(without).depthMm, 0.2);
      else expect(one.pushNPerMm).toBeGreaterThan(0);
      // All sideways forces balance, and so do their moments about the upper row with the weight.
      expectNear(one.backwardAtTopNPerMm, one.forwardAtBottomNPerMm + one.pushNPerMm, 1e-12);
    });
    expect(converged(held.at(-1) as Solved<FoldShape>).depthMm).toBeGreaterThan(
      converged(free.at(-1) as Solved<FoldShape>).depthMm,
    );
  });

  test("a glass pane 10 mm behind is not passed and moves the loop forward", () => {
    const held = hangFolds({ ...cloth, paneMm: 10 }, gaps).map(converged);
    for (const one of held) expect(one.behindMm).toBeGreaterThan(-10.3);
    expect(Math.max(...held.map((one) => one.pushNPerMm))).toBeGreaterThan(0);
  });
});

describe("any fold", () => {
  const weights = fc.double({ min: 0.05, max: 1500, noNaN: true });
  const parts = fc.double({ min: 0.06, max: 0.97, noNaN: true });

  test("a stiffer cloth never droops more; forces carry the weight; scale does not matter", () => {
    fc.assert(
      fc.property(weights, parts, fc.double({ min: 1.1, max: 20, noNaN: true }), (weight, part, more) => {
        const gap = 2 * part;
        const soft = converged(hangFold(unit(weight, gap), 80));
        const stiff = converged(hangFold({ ...unit(weight, gap), rigidityNmm: more }, 80));
        expect(stiff.droopMm).toBeLessThanOrEqual(soft.droopMm + 1e-5);
        const scaled = converged(
          hangFold(
            { arcMm: 250, gapMm: 125 * gap, weightNPerMm2: weight * 1e-9, rigidityNmm: 1e-9 * 125 ** 3 },
            80,
          ),
        );
        expectNear(scaled.depthMm / 125, soft.depthMm, 1e-8);
        expectNear(soft.upAtTopNPerMm + soft.upAtBottomNPerMm, 2 * weight, 1e-9 * weight);
      }),
      { numRuns: 40, seed: 5 },
    );
  });

  test("what cannot be solved says so and hands back its best", () => {
    // Nine nodes cannot carry a boundary layer of a hundredth of the strip.
    const solved = hangFold(unit(1e9, 0.4), 8);
    expect(solved.kind).toBe("notConverged");
    expect(bestOf(solved).xMm.length).toBe(9);
  });

  test.each([
    [2, "gapMm"],
    [-0.1, "gapMm"],
    [Number.NaN, "gapMm"],
  ])("a gap of %f is refused", (gap, name) => {
    expect(() => hangFold(unit(1, gap))).toThrow(`invalid ${name}`);
  });
});

describe("weightless strip", () => {
  test.each(
    casesOf("hanging_fold_lambda0_closed_form").filter(([, one]) => given(one.inputs, "d/(2a)") >= 0),
  )("%s", (_name, { inputs, outputs }) => {
    const found = weightlessFold(2 * given(inputs, "d/(2a)"));
    expectNear(found.depth, given(outputs, "xmax/a=2k/K"), 1e-9);
    expectNear(found.thrust, -given(outputs, "V0 a^2/B=-K^2"), 1e-8);
    expectNear(found.endSlopeRad / DEG, given(outputs, "end_slope_deg"), 1e-7);
    expectNear(found.modulus ** 2, given(outputs, "m=k^2"), 1e-9);
  });

  test.each(casesOf("weightless_elastica_table").filter(([, one]) => given(one.outputs, "xa/l") > 0))(
    "%s",
    (_name, { outputs }) => {
      // The table is a cantilever of length l: half of a strip whose hinges are 2 xa apart.
      const found = weightlessFold(2 * given(outputs, "xa/l"));
      expectNear(found.thrust / (Math.PI / 2) ** 2, given(outputs, "P/Pcr"), 1e-5);
      expectNear(found.depth, given(outputs, "ya/l"), 1e-5);
    },
  );
});
