import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { bestOf } from "../solve/outcome.ts";
import { cantilever, weightAtChord } from "./cantilever.ts";

const DEG = Math.PI / 180;

describe("heavy cantilever", () => {
  test.each(casesOf("heavy_elastica_cantilever"))("%s", (_name, { inputs, outputs }) => {
    const solved = cantilever(given(inputs, "lambda=wL^3/B"));
    expect(solved.kind).toBe("converged");
    const { out, down, tipRad, chordRad, rootCurvature } = bestOf(solved);
    const near = (value: number, name: string, tol: number) =>
      expectNear(value, given(outputs, name), tol, name);
    near(out, "x_over_L", 1e-6);
    near(down, "y_over_L", 1e-6);
    near(tipRad / DEG, "tip_deg", 1e-6 / DEG);
    near(chordRad / DEG, "chord_deg", 1e-6 / DEG);
    near(rootCurvature, "k0L", 1e-6 * given(outputs, "k0L"));
  });

  test.each(
    casesOf("heavy_elastica_chord_angle").filter(
      ([, one]) => given(one.inputs, "chord_deg") % 20 === 0 || one.id.endsWith("41.5"),
    ),
  )("λ from the chord: %s", (_name, { inputs, outputs }) => {
    const root = weightAtChord(given(inputs, "chord_deg") * DEG);
    if (root.kind !== "converged") throw new Error(root.kind);
    expectNear(root.value, given(outputs, "lam"), 1e-6 * given(outputs, "lam"));
    expectNear(Math.cbrt(root.value), given(outputs, "l_over_c"), 1e-6);
  });

  test("both limits: y → λ/8 and tip → λ/6 for a light strip; x → √(2/λ) for a heavy one (series and boundary layer)", () => {
    const light = bestOf(cantilever(0.001));
    expectNear(light.down, 0.001 / 8, 1e-9);
    expectNear(light.tipRad, 0.001 / 6, 1e-9);
    const heavy = bestOf(cantilever(1000));
    expectNear(heavy.out / Math.sqrt(2 / 1000), 1, 0.03);
  });
});
