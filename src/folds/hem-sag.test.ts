import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../test/near.ts";
import type { Bar } from "../job/index.ts";
import { barStiffnessNmm2, barWeightNPerMm, limitOf, sagOver } from "./hem-sag.ts";

const bar: Bar = { id: "bar", name: "Flat steel", material: "steel", widthMm: 20, thicknessMm: 3 };
const loaded = (one: Bar, loadNPerMm = 0.01) => ({ bar: one, loadNPerMm });

describe("sag of a bar between columns", () => {
  test("a flat bar on edge bends by b·h³/12, a rod by π·d⁴/64 (any handbook of beams)", () => {
    expectNear(barStiffnessNmm2(bar), 210_000 * 2000, 1e-6);
    const rod: Bar = { ...bar, round: true, widthMm: 10, thicknessMm: 10 };
    expectNear(barStiffnessNmm2(rod), (210_000 * Math.PI * 10_000) / 64, 1e-3);
  });

  test("20 × 3 mm of steel weighs 0.471 kg a metre (EN 1991-1-1 density)", () => {
    expectNear(barWeightNPerMm(bar), 0.471 * 9.80665e-3, 1e-9);
  });

  test("on two columns at its ends: 5 q L⁴ / 384 EI (AWC Design Aid 6, fig. 1)", () => {
    const expected = (5 * 0.01 * 1000 ** 4) / (384 * barStiffnessNmm2(bar));
    expectNear(sagOver([0, 1000], 1000, loaded(bar)), expected, 1e-9);
  });

  // Each bay is a beam held at one end and propped at the other: y = q·x·(l³ − 3·l·x² + 2·x³)/(48·E·I), the most of it
  // at x = (1 + √33)/16 of l from the prop.
  test("on three: q L⁴ / 185 EI, beside the middle of a bay (AWC Design Aid 6, fig. 29)", () => {
    const x = ((1 + Math.sqrt(33)) / 16) * 1000;
    const most = (0.01 * x * (1000 ** 3 - 3000 * x ** 2 + 2 * x ** 3)) / (48 * barStiffnessNmm2(bar));
    expectNear(most, (0.01 * 1000 ** 4) / (185 * barStiffnessNmm2(bar)), 0.003 * most);
    expectNear(sagOver([0, 1000, 2000], 2000, loaded(bar)), most, 1e-6 * most);
  });

  test("one column holds nothing level: nothing is said", () => {
    expect(sagOver([500], 1000, loaded(bar))).toBe(0);
  });

  test("the limit: 2 mm, and a 300th of a wide bay", () => {
    expect(limitOf(250)).toBe(2);
    expect(limitOf(900)).toBe(3);
  });

  test("a stiffer bar never sags more; a heavier load never less", () => {
    const places = fc.array(fc.integer({ min: 60, max: 600 }), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(places, fc.double({ min: 1, max: 3, noNaN: true }), (spans, more) => {
        const columns = [50];
        for (const span of spans) columns.push((columns.at(-1) ?? 0) + span);
        const width = (columns.at(-1) ?? 0) + 50;
        const plain = sagOver(columns, width, loaded(bar));
        expect(sagOver(columns, width, loaded({ ...bar, widthMm: 20 * more }))).toBeLessThanOrEqual(
          plain + 1e-12,
        );
        expect(sagOver(columns, width, loaded(bar, 0.01 * more))).toBeGreaterThanOrEqual(plain - 1e-12);
      }),
    );
  });
});
