import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../test/near.ts";
import {
  type Catenary,
  type CatenaryOutcome,
  catenaryOfArc,
  catenaryOfArcAndSag,
  catenaryOfSag,
  slantedCatenary,
} from "./catenary.ts";

function hung(outcome: CatenaryOutcome): Catenary {
  if (outcome.kind !== "hangs") throw new Error(outcome.kind);
  return outcome.value;
}

describe("catenary", () => {
  test.each(casesOf("catenary_table"))("%s", (_name, { inputs, outputs }) => {
    const found = hung(catenaryOfArc(1000, 1000 * given(inputs, "S/L")));
    const near = (value: number, name: string) =>
      expectNear(value, given(outputs, name), 1e-7 * given(outputs, name));
    near(found.sagMm / 1000, "sag/L");
    near((found.endRad * 180) / Math.PI, "end_angle_deg");
    near(found.parameterMm / 1000, "H/(wL)");
    near((found.parameterMm + found.sagMm) / 1000, "Tmax/(wL)");
  });

  test("span 500, sag 100: k 327.931, cord 549.86 (Beer & Johnston, sample problem 7.10; from memory)", () => {
    const found = hung(catenaryOfSag(500, 100));
    expectNear(found.parameterMm, 327.93129, 1e-5);
    expectNear(found.arcMm, 549.8591, 1e-4);
  });

  test("sag 25 ft at k 1940.625 ft spans 622.33 ft of a 625 ft line (worked example, copy read)", () => {
    const found = hung(catenaryOfArcAndSag(625, 25));
    expectNear(found.parameterMm, 1940.625, 1e-9);
    expectNear(found.spanMm, 622.33, 0.005);
  });

  test("80 ft of cable that sags 40 ft spans nothing (classic problem)", () => {
    expect(catenaryOfArcAndSag(80, 40)).toMatchObject({ kind: "folded", value: { spanMm: 0 } });
  });

  test("ends of what can hang", () => {
    expect(catenaryOfArc(1000, 999)).toEqual({ kind: "short", missingMm: 1 });
    expect(catenaryOfArc(1000, 1000)).toMatchObject({ kind: "taut", value: { sagMm: 0 } });
    expect(catenaryOfArc(0, 100)).toMatchObject({ kind: "folded", value: { sagMm: 50 } });
    expect(catenaryOfArcAndSag(80, 41)).toEqual({ kind: "short", missingMm: 2 });
    expect(() => catenaryOfArc(Number.NaN, 1)).toThrow("invalid spanMm");
  });

  test("arc to sag, sag to arc and both to span come back to the start; more cloth sags more", () => {
    const slack = fc.double({ min: 1e-6, max: 30, noNaN: true });
    fc.assert(
      fc.property(slack, slack, (a, b) => {
        const [less, more] = [
          hung(catenaryOfArc(800, 800 * (1 + Math.min(a, b)))),
          hung(catenaryOfArc(800, 800 * (1 + Math.max(a, b)))),
        ];
        expect(more.sagMm).toBeGreaterThanOrEqual(less.sagMm * (1 - 1e-12));
        expectNear(hung(catenaryOfSag(800, more.sagMm)).arcMm, more.arcMm, 1e-8 * more.arcMm);
        expectNear(hung(catenaryOfArcAndSag(more.arcMm, more.sagMm)).spanMm, 800, 1e-5);
      }),
    );
  });

  test("very little and very much slack", () => {
    // f/L ≈ √(3(S/L − 1)/8) as slack goes to nothing; f → S/2 as it grows.
    expectNear(hung(catenaryOfArc(1, 1 + 1e-10)).sagMm, Math.sqrt(3e-10 / 8), 1e-9);
    expectNear(hung(catenaryOfArc(1, 1e6)).sagMm, 5e5, 20);
    expect(catenaryOfSag(1, 1e7).kind).toBe("hangs");
  });

  test.each(casesOf("catenary_unequal_supports"))("%s", (_name, { inputs, outputs }) => {
    const found = slantedCatenary(given(inputs, "h"), given(inputs, "d"), given(inputs, "S"));
    expectNear(found?.parameterMm ?? Number.NaN, given(outputs, "c"), 2e-7);
    expectNear(found?.droopMm ?? Number.NaN, given(outputs, "droop_below_lower"), 2e-7);
    expectNear(found?.upperShare ?? Number.NaN, given(outputs, "Vtop/(wS)"), 5e-6);
  });

  test.each([
    [0.1, 0.5, 1, 0.0115904, 0.2385887, 0.75009],
    [0.01, 0.5, 1, 0.0007025, 0.2492981, 0.75],
  ])("across %f, down %f, cord %f (Routh’s relation, evaluated apart)", (h, d, s, k, droop, share) => {
    const found = slantedCatenary(h, d, s);
    expectNear(found?.parameterMm ?? Number.NaN, k, 1e-7);
    expectNear(found?.droopMm ?? Number.NaN, droop, 1e-7);
    expectNear(found?.upperShare ?? Number.NaN, share, 1e-6);
  });
});
