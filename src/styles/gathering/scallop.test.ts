import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { scallopOfArc, scallopOfSag, scallopWithin } from "../base/scallop.ts";
import { scallopedLines } from "./scalloped-line.ts";

const SPAN_MM = 254;

/** Standard catenary, S/L = sinh u / u and f/L = (cosh u − 1)/2u: see the source of each case. */
describe("a scallop by the published catenary table", () => {
  test.each(casesOf("catenary_table"))("%s", (_name, { inputs, outputs }) => {
    const arcMm = given(inputs, "S/L") * SPAN_MM;
    const sagMm = given(outputs, "sag/L") * SPAN_MM;
    expectNear(scallopOfArc(SPAN_MM, arcMm).sagMm, sagMm, 1e-6 * SPAN_MM, "sag from cloth");
    expectNear(scallopOfSag(SPAN_MM, sagMm).arcMm, arcMm, 1e-6 * SPAN_MM, "cloth from sag");
  });
});

describe("cloth and sag", () => {
  it("more cloth never hangs less", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 3000, noNaN: true }),
        fc.double({ min: 1, max: 20, noNaN: true }),
        fc.double({ min: 1, max: 1.5, noNaN: true }),
        (spanMm, fullness, more) => {
          const less = scallopOfArc(spanMm, spanMm * fullness);
          const fuller = scallopOfArc(spanMm, spanMm * fullness * more);
          expect(fuller.sagMm).toBeGreaterThanOrEqual(less.sagMm - 1e-6);
          // Two legs side by side hang by half of the cloth: nothing hangs deeper.
          expect(less.sagMm).toBeLessThanOrEqual(less.arcMm / 2 + 1e-9);
        },
      ),
    );
  });

  it("hangs no deeper than the length allows, and then takes the cloth of that depth alone", () => {
    const { sagMm, arcMm } = scallopWithin(SPAN_MM, 2.5 * SPAN_MM, 100);
    expectNear(sagMm, 100, 1e-6);
    expectNear(arcMm, scallopOfSag(SPAN_MM, 100).arcMm, 1e-6);
  });

  it("is as long when drawn as its cloth", () => {
    const swag = { fromMm: 0, toMm: SPAN_MM, arcMm: 0, sagMm: scallopOfArc(SPAN_MM, 1.3 * SPAN_MM).sagMm };
    const points = scallopedLines(SPAN_MM, [swag], ({ sagMm }) => sagMm)(500);
    const drawn = points.slice(1).reduce((sum, [x, y], i) => {
      const [x0, y0] = points[i] ?? [x, y];
      return sum + Math.hypot(x - x0, y - y0);
    }, 0);
    expectNear(drawn, 1.3 * SPAN_MM, 0.5, "drawn length");
    expectNear(Math.max(...points.map(([, y]) => y)), 500 + swag.sagMm, 1e-6, "lowest point");
  });
});
