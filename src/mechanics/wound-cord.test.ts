import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { turnsBetween, woundRadiusMm } from "./wound-cord.ts";

/**
 * Length of r = aθ from the pole: a/2·(θ·sqrt(1 + θ²) + asinh θ), “Archimedean spiral, arc length”
 * (Weisstein, CRC Concise Encyclopedia of Mathematics; NIST DLMF 4.37 for asinh).
 */
function spiralLength(a: number, theta: number): number {
  return (a / 2) * (theta * Math.sqrt(1 + theta ** 2) + Math.asinh(theta));
}

const winding = fc.record({
  coreRadiusMm: fc.double({ min: 2, max: 60, noNaN: true }),
  cordDiameterMm: fc.double({ min: 0.5, max: 2, noNaN: true }),
  sideBySide: fc.integer({ min: 1, max: 12 }),
});
const turnsOfIt = fc.double({ min: 0.5, max: 80, noNaN: true });

describe("cord wound on a spool", () => {
  test("its radius is that of the Archimedean spiral of exactly its length, but for the slope of the spiral", () => {
    fc.assert(
      fc.property(winding, turnsOfIt, (one, turns) => {
        // The middle line starts at r + d/2 and grows by d/n a turn: r = aθ with a = d/(2πn).
        const a = one.cordDiameterMm / (2 * Math.PI * one.sideBySide);
        const first = (one.coreRadiusMm + one.cordDiameterMm / 2) / a;
        const last = first + 2 * Math.PI * turns;
        const lengthMm = spiralLength(a, last) - spiralLength(a, first);
        const found = woundRadiusMm(one, lengthMm);
        // ρ is too large by a²·ln(ρ/ρ₀)/(2ρ²) of itself: the difference of both integrals, to the first order.
        const slope = (a ** 2 * Math.log(last / first)) / (2 * (a * last) ** 2);
        expect(found / (a * last) - 1).toBeGreaterThan(-1e-9);
        expect(found / (a * last) - 1).toBeLessThan(1.1 * slope + 1e-9);
        expect(slope).toBeLessThan(1.1e-3);
        const counted = turnsBetween(one, woundRadiusMm(one, 0), found);
        expect(Math.abs(counted - turns)).toBeLessThan(2e-3 * (turns + last / (2 * Math.PI)));
      }),
    );
  });

  test("layer by layer, wrap by wrap, the last wrap lies within one cord of it", () => {
    fc.assert(
      fc.property(winding, fc.integer({ min: 1, max: 400 }), (one, wraps) => {
        let lengthMm = 0;
        let radiusMm = 0;
        for (let wrap = 0; wrap < wraps; wrap++) {
          const layer = Math.floor(wrap / one.sideBySide);
          radiusMm = one.coreRadiusMm + (layer + 0.5) * one.cordDiameterMm;
          lengthMm += 2 * Math.PI * radiusMm;
        }
        expect(Math.abs(woundRadiusMm(one, lengthMm) - radiusMm)).toBeLessThanOrEqual(one.cordDiameterMm);
      }),
    );
  });

  test("more cord never makes it smaller, and more room side by side never larger", () => {
    fc.assert(
      fc.property(winding, turnsOfIt, turnsOfIt, (one, a, b) => {
        const [less, more] = [Math.min(a, b) * 100, Math.max(a, b) * 100];
        expect(woundRadiusMm(one, more)).toBeGreaterThanOrEqual(woundRadiusMm(one, less));
        const wider = { ...one, sideBySide: one.sideBySide + 1 };
        expect(woundRadiusMm(wider, more)).toBeLessThanOrEqual(woundRadiusMm(one, more));
      }),
    );
  });
});
