import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { dropFamily } from "./drop-family.ts";
import { type PressedDrops, pressDrops } from "./pressed-drop.ts";
import { placesOf } from "./strip.ts";

/** ½∫θ′² less what the weight gave up, in units of the half arc and of the rigidity. */
function energyOf({ weight }: PressedDrops, slope: Float64Array): number {
  const step = 2 / (slope.length - 1);
  const { y } = placesOf(slope);
  let energy = 0;
  for (let i = 0; i + 1 < slope.length; i++) {
    const [a, b] = [slope[i] ?? 0, slope[i + 1] ?? 0];
    energy += (b - a) ** 2 / (2 * step) - (weight * step * ((y[i] ?? 0) + (y[i + 1] ?? 0))) / 2;
  }
  return energy;
}

describe("a drop pressed between two planes through its hinges", () => {
  test.each([4, 64, 256])("λ %f: even about its axis, tighter for more", (weight) => {
    const { presses, converged } = pressDrops(weight);
    expect(converged).toBe(true);
    presses.forEach(({ slope, moment, halfAngleRad }, k) => {
      const { x, y } = placesOf(slope);
      const n = slope.length - 1;
      for (let i = 0; i <= n; i++) expectNear((x[i] ?? 0) + (x[n - i] ?? 0), 0, 1e-9);
      const before = presses[k - 1];
      if (before !== undefined) {
        expect(moment).toBeGreaterThan(before.moment);
        expect(halfAngleRad).toBeLessThan(before.halfAngleRad);
      }
      // Springs sink by up to a few thousandths of the half arc.
      for (let i = 1; i < n; i++)
        expect(Math.abs(x[i] ?? 0)).toBeLessThan((y[i] ?? 0) * Math.tan(halfAngleRad) + 6e-3);
    });
  });

  test("energy against moment: turning both planes by dψ costs 2 M dψ", () => {
    const drops = pressDrops(64, 128);
    for (let k = 1; k < drops.presses.length; k++) {
      const [wide, tight] = [drops.presses[k - 1], drops.presses[k]];
      if (!wide || !tight) throw new Error("a press is missing");
      const cost = energyOf(drops, tight.slope) - energyOf(drops, wide.slope);
      const turn = wide.halfAngleRad - tight.halfAngleRad;
      // The moment grows between the two, so the cost lies between both.
      expect(cost).toBeGreaterThan(2 * wide.moment * turn * 0.97);
      expect(cost).toBeLessThan(2 * tight.moment * turn * 1.03);
    }
  });

  test("pressed hard, the loop at the bottom is that of two-point bending: F D² = 2.871 B between plates D apart", () => {
    // Matthewson, Kurkjian & Gulati, J. Am. Ceram. Soc. 69 (1986) 815: D = 1.198 d E/σ, that is ½ (∫√sin θ dθ)² = 2.871; from memory.
    // A drop gets there as its loop gets small against its legs, so three widths are drawn on to none.
    const near = pressDrops(0.01, 256)
      .presses.slice(-3)
      .map(({ moment, slope }) => {
        const { x, y } = placesOf(slope);
        const widest = x.reduce((best, value, i) => (value > (x[best] ?? 0) ? i : best), 0);
        const [half, down] = [x[widest] ?? 0, y[widest] ?? 0];
        return { half, value: (moment / Math.hypot(half, down)) * (2 * half) ** 2 };
      });
    const drawnOn = near.reduce((sum, { half, value }, i) => {
      const others = near.filter((_, k) => k !== i);
      return sum + value * others.reduce((part, other) => (part * other.half) / (other.half - half), 1);
    }, 0);
    expectNear(drawnOn, 2.871, 0.05);
  });

  test("a finer mesh changes nothing that matters", () => {
    const [coarse, fine] = [pressDrops(128), pressDrops(128, 192)];
    coarse.presses.forEach((press, k) => {
      expectNear(press.halfAngleRad, fine.presses[k]?.halfAngleRad ?? 0, 2e-3 * press.halfAngleRad);
      expectNear(press.moment, fine.presses[k]?.moment ?? 0, 0.08 * press.moment + 1e-9);
    });
  });
});

describe("drops between those that were solved", () => {
  test.each([1.4, 11.3, 90, 700])("λ %f: as if it were solved itself", (weight) => {
    const family = dropFamily(weight);
    const exact = pressDrops(weight);
    expectNear(family.freeRad, exact.presses[0]?.halfAngleRad ?? 0, 0.012 * family.freeRad);
    for (const { halfAngleRad, moment, slope } of exact.presses.slice(1)) {
      expectNear(family.halfRad(moment), halfAngleRad, 0.03 * halfAngleRad);
      const drawn = placesOf(family.slope(halfAngleRad) ?? new Float64Array(3));
      const solved = placesOf(slope);
      drawn.x.forEach((x, i) => {
        // Drawn with the shape of the nearest level.
        expectNear(x, solved.x[i] ?? 0, 0.035);
        expectNear(drawn.y[i] ?? 0, solved.y[i] ?? 0, 0.035);
      });
    }
  });

  test("the angle falls as the moment grows, on and off the table, for every weight", () => {
    for (const weight of [0, 0.3, 5, 77, 1024, 30_000]) {
      const family = dropFamily(weight);
      let was = Number.POSITIVE_INFINITY;
      for (let moment = 0.001; moment < 1e6; moment *= 1.7) {
        const half = family.halfRad(moment);
        expect(half).toBeLessThan(was);
        was = half;
      }
      expect(family.halfRad(0)).toBe(family.freeRad);
    }
  });

  test("limp cloth: the loop keeps its size in bending lengths", () => {
    const [one, other] = [dropFamily(1024), dropFamily(8 * 1024)];
    expectNear(one.freeRad / other.freeRad, 2, 1e-9);
  });

  test("a weight below nothing is refused", () => expect(() => dropFamily(-1)).toThrow("invalid weight"));
});
