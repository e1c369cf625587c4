import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { casesOf, given, type PhysicsCase } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { dowelBearingNPerMm2, nailLateralN, screwLateralN } from "./lateral.ts";
import { screwPulls } from "./prying.ts";
import { SCREW_SHANK_MM } from "./screw-sizes.ts";
import { densityKgPerM3, WOOD_SPECIES } from "./species.ts";
import { lagWithdrawalN, nailWithdrawalN, ringNailWithdrawalN, screwWithdrawalN } from "./withdrawal.ts";

const IN = 25.4;
const LBF = 4.4482216152605;
/** The handbook rounds its metric factors to four digits, so an inch formula is met within this. */
const ROUNDED = 5e-4;

/** How each case of the list is answered: our value, the expected one, and how near. */
const ANSWERS: Record<
  string,
  (one: PhysicsCase) => [found: number | undefined, expected: number, relative: number]
> = {
  "108.25 G^2 D L": ({ inputs, outputs }) => [
    screwWithdrawalN(driven(inputs)),
    given(outputs, "p_ultimate_N"),
    1e-6,
  ],
  "15700 G^2 D L": ({ inputs, outputs }) => [
    screwWithdrawalN(inches(inputs, "L_in")) / LBF,
    given(outputs, "p_ultimate_lbf"),
    ROUNDED,
  ],
  // The American design code allows the ultimate of the same formula divided by about five and a half.
  "2850 G^2 D": ({ inputs, outputs }) => [
    screwWithdrawalN({ gravity: given(inputs, "G"), diameterMm: given(inputs, "D_in") * IN, depthMm: IN }) /
      LBF /
      5.509,
    given(outputs, "W_allow_lbf_per_in"),
    ROUNDED,
  ],
  "125.4 G^1.5 D^0.75 L": ({ inputs, outputs }) => [
    lagWithdrawalN(driven(inputs)),
    given(outputs, "p_ultimate_N"),
    1e-6,
  ],
  "K D^2": ({ inputs, outputs }) => [
    screwLateralN("softwood", given(inputs, "K") > 25 ? 0.45 : 0.35, given(inputs, "D_mm")),
    given(outputs, "p_lateral_N"),
    1e-6,
  ],
  "K D^1.5": ({ inputs, outputs }) => [
    nailLateralN("softwood", 0.45, given(inputs, "D_mm")),
    given(outputs, "p_lateral_N"),
    1e-6,
  ],
  "114.5 G^1.84": ({ inputs, outputs }) => [
    dowelBearingNPerMm2(given(inputs, "G")),
    given(outputs, "Fe_MPa"),
    1e-6,
  ],
  // 1380 allowed against 7850 ultimate in the same units.
  "1380 G^2.5 D pt": ({ inputs, outputs }) => [
    (nailWithdrawalN(inches(inputs, "pt_in")) / LBF) * (1380 / 7850),
    given(outputs, "W_lbf"),
    ROUNDED,
  ],
};

function driven(inputs: Record<string, unknown>) {
  return { gravity: given(inputs, "G"), diameterMm: given(inputs, "D_mm"), depthMm: given(inputs, "L_mm") };
}

function inches(inputs: Record<string, unknown>, depth: string) {
  return {
    gravity: given(inputs, "G"),
    diameterMm: given(inputs, "D_in") * IN,
    depthMm: given(inputs, depth) * IN,
  };
}

describe("fasteners", () => {
  test.each(casesOf("wood_fastener"))("%s", (_name, one) => {
    const answer = ANSWERS[String(one.inputs.formula)];
    if (answer === undefined) throw new Error(`no answer to ${one.inputs.formula}`);
    const [found, expected, relative] = answer(one);
    expectNear(found ?? Number.NaN, expected, relative * expected, one.source);
  });

  test("nail 3.76 × 50 mm in G 0.5: 1798.6 N (equation 8-1); a ring-shank one 77.57·0.25·3.76·50 (equation 8-2a)", () => {
    const one = { gravity: 0.5, diameterMm: 3.76, depthMm: 50 };
    expectNear(nailWithdrawalN(one), 1798.625, 1e-3);
    expectNear(ringNailWithdrawalN(one), 3645.79, 0.01);
  });

  test("shanks by gauge: 0.060 + 0.013·n inches to their printed two decimals (ASME B18.6.1; from memory)", () => {
    for (const [gauge, shankMm] of Object.entries(SCREW_SHANK_MM)) {
      expectNear(shankMm, (0.06 + 0.013 * Number(gauge)) * IN, 0.01, gauge);
    }
  });

  test("no lateral factor where Table 8-4 does not reach", () => {
    expect(screwLateralN("softwood", 0.28, 4)).toBeUndefined();
    expect(screwLateralN("hardwood", 0.75, 4)).toBeUndefined();
    expect(screwLateralN("softwood", 0.424, 4)).toBe(23.17 * 16);
  });

  test("denser wood and a longer screw never hold less", () => {
    const part = fc.double({ min: 0.29, max: 0.74, noNaN: true });
    fc.assert(
      fc.property(part, part, (a, b) => {
        const at = (gravity: number) => screwWithdrawalN({ gravity, diameterMm: 4, depthMm: 30 * gravity });
        expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)));
      }),
    );
  });
});

describe("species", () => {
  const byName = new Map(
    Object.values(WOOD_SPECIES).map((one) => [one.name.toLowerCase().split(/\W+/).sort().join(" "), one]),
  );
  test.each(casesOf("wood_property"))("%s", (_name, { inputs, outputs }) => {
    const words = String(inputs.species).toLowerCase().match(/\w+/g) ?? [];
    const named = words.filter((word) => word !== "american" && word !== "imported");
    const species = byName.get(named.sort().join(" "));
    expect(species?.gravity).toBe(outputs.G);
    expect(species?.elasticityMPa).toBe(outputs.MOE_MPa);
    expect(species && "ruptureKPa" in species ? species.ruptureKPa : null).toBe(outputs.MOR_kPa);
    const density = outputs["density12_kg_m3=1120G"];
    if (typeof density === "number") expectNear(densityKgPerM3(species?.gravity ?? 0), density, 1e-9);
  });
});

describe("prying", () => {
  test("one screw 40 mm up, 60 N at 80 mm: 60 · 80 / 40 = 120 N", () => {
    expect(screwPulls({ loadN: 60, armMm: 80, screwsMm: [40] })).toEqual([{ pullN: 120, shearN: 60 }]);
  });

  test("pulls balance the moment of the load", () => {
    const heights = fc.array(fc.double({ min: 5, max: 200, noNaN: true }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(heights, fc.double({ min: 1, max: 300, noNaN: true }), (screwsMm, armMm) => {
        const found = screwPulls({ loadN: 50, armMm, screwsMm });
        const moment = found.reduce((sum, { pullN }, i) => sum + pullN * (screwsMm[i] ?? 0), 0);
        expectNear(moment, 50 * armMm, 1e-9 * 50 * armMm);
        expectNear(
          found.reduce((sum, { shearN }) => sum + shearN, 0),
          50,
          1e-9,
        );
      }),
    );
  });
});
