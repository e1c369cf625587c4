import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { hangFromNothing } from "./hang-strip.ts";
import { hangFold } from "./hanging-fold.ts";
import type { StripProblem } from "./strip.ts";
import { hangStrip } from "./strip-newton.ts";
import { isStable } from "./strip-stability.ts";

describe("would a fold stay as it hangs", () => {
  // The table notes that the reduced Hessian is positive in all of its cases.
  test.each(casesOf("hanging_fold_pinned"))("%s", (_name, { inputs }) => {
    const solved = hangFold({
      arcMm: 2,
      gapMm: 2 * given(inputs, "d/(2a)"),
      weightNPerMm2: given(inputs, "lambda=w*a^3/B"),
      rigidityNmm: 1,
    });
    expect(solved.kind === "converged" && solved.value.stable).toBe(true);
  });

  test("a strip between hinges that buckles in two half waves would not (Euler’s second load, 4 π² B/l²)", () => {
    const problem: StripProblem = { weight: 0, gap: 1.9, planes: [] };
    const slope = new Float64Array(65).map((_, i) => 0.4 * Math.cos((Math.PI * i) / 32));
    const solved = hangStrip(problem, { slope, up: -(Math.PI ** 2), side: 0, push: new Float64Array(65) }, 1);
    if (solved.kind !== "converged") throw new Error("not converged");
    expect(-solved.value.up / Math.PI ** 2).toBeGreaterThan(1);
    expect(-solved.value.up / Math.PI ** 2).toBeLessThan(1.1);
    expect(isStable(problem, solved.value)).toBe(false);
  });

  test("one that leans on what is behind it stays", () => {
    const problem: StripProblem = {
      weight: 60,
      gap: 0.4,
      planes: [{ out: 0, down: 0, tiltRad: 0.3, facing: 1, hanging: true }],
    };
    const solved = hangFromNothing(problem, 80);
    if (solved.kind !== "converged") throw new Error("not converged");
    expect(Math.max(...solved.value.push)).toBeGreaterThan(0);
    expect(isStable(problem, solved.value)).toBe(true);
  });
});
