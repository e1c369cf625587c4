import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { bendingLengthMm, heartLoopLengthMm, peirceLengthMm, TESTER_SLOPE_DEG } from "./bending-length.ts";
import {
  bendingLengthOfRigidityMm,
  looseLayers,
  overallRigidityNmm,
  RIGIDITY_NMM_PER,
  rigidityNmm,
} from "./rigidity.ts";

const DEG = Math.PI / 180;

describe("bending of cloth", () => {
  test.each(casesOf("fabric_rigidity"))("%s", (_name, { inputs, outputs }) => {
    const length = bendingLengthMm(10 * given(inputs, "overhang_cm"));
    expectNear(length / 10, given(outputs, "c_cm"), 1e-9);
    const rigidity = rigidityNmm(given(inputs, "W_g_m2"), length);
    const [micro, mg] = [given(outputs, "B_uN_m"), given(outputs, "G_mg_cm")];
    expectNear(rigidity / RIGIDITY_NMM_PER.µN·m, micro, 1e-9 * micro);
    expectNear(rigidity / RIGIDITY_NMM_PER.mg·cm, mg, 1e-9 * mg);
    // ISO 9073-7 takes g as 10, which makes it 1.97 % larger.
    const iso = given(outputs, "ISO9073-7_mN_cm(1e-3 factor)");
    expectNear((rigidity / RIGIDITY_NMM_PER.mN·cm) * (10 / 9.80665), iso, 1e-9 * iso);
  });

  test.each(casesOf("fabric_measured").filter(([, one]) => "B_uN_m" in one.inputs))("%s", (_name, one) => {
    const rigidity = given(one.inputs, "B_uN_m") * RIGIDITY_NMM_PER.µN·m;
    const expected = given(one.outputs, "c_cm");
    expectNear(
      bendingLengthOfRigidityMm(given(one.inputs, "areal_g_m2"), rigidity) / 10,
      expected,
      1e-4 * expected,
    );
  });

  test.each(casesOf("heavy_elastica_chord_angle"))("Peirce’s formula: %s", (_name, { inputs, outputs }) => {
    expectNear(peirceLengthMm(1, given(inputs, "chord_deg") * DEG), given(outputs, "peirce_c_over_l"), 1e-7);
  });

  test("half the overhang is nearer the exact strip at the tester’s slope than Peirce’s formula", () => {
    const exact = 0.49991259;
    const off = (value: number) => Math.abs(value / exact - 1);
    expect(off(bendingLengthMm(1))).toBeLessThan(2e-4);
    expect(off(peirceLengthMm(1, TESTER_SLOPE_DEG * DEG))).toBeGreaterThan(0.018);
  });

  test.each(casesOf("heart_loop").filter(([, one]) => one.outputs["c/L' exact"] !== null))(
    "heart loop: %s",
    (_name, { outputs }) => {
      const found = heartLoopLengthMm(1, given(outputs, "l/L'"));
      // The height of the loop is printed to seven digits and l₀ is taken from it.
      expectNear(found, given(outputs, "c/L' Peirce"), 3e-6);
      const exact = given(outputs, "c/L' exact");
      expectNear(found, exact, 0.041 * exact);
    },
  );

  const layer = fc.record({
    massGPerM2: fc.double({ min: 20, max: 500, noNaN: true }),
    bendingLengthMm: fc.double({ min: 5, max: 60, noNaN: true }),
  });

  test("loose layers: two of one cloth bend as one of it; a mixture lies between", () => {
    fc.assert(
      fc.property(layer, layer, (a, b) => {
        expectNear(looseLayers([a, a]).bendingLengthMm, a.bendingLengthMm, 1e-9);
        const both = looseLayers([a, b]);
        expectNear(both.massGPerM2, a.massGPerM2 + b.massGPerM2, 1e-9);
        expect(both.bendingLengthMm).toBeLessThanOrEqual(
          Math.max(a.bendingLengthMm, b.bendingLengthMm) + 1e-9,
        );
        expect(both.bendingLengthMm).toBeGreaterThanOrEqual(
          Math.min(a.bendingLengthMm, b.bendingLengthMm) - 1e-9,
        );
      }),
    );
  });

  test("no layers weigh nothing", () =>
    expect(looseLayers([])).toEqual({ massGPerM2: 0, bendingLengthMm: 0 }));
  test("overall rigidity is the geometric mean", () => expect(overallRigidityNmm(4, 9)).toBe(6));
  test("KES unit: 1 gf·cm²/cm is 98.0665 µN·m and 1000 mg·cm", () => {
    expectNear(RIGIDITY_NMM_PER["gf·cm²/cm"] / RIGIDITY_NMM_PER.µN·m, 98.0665, 1e-9);
    expectNear(RIGIDITY_NMM_PER["gf·cm²/cm"] / RIGIDITY_NMM_PER.mg·cm, 1000, 1e-9);
  });
});
