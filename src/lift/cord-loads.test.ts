import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { handShade } from "../../test/hand-shade.ts";
import { expectNear } from "../../test/near.ts";
import { cordLoads, heldWeight } from "./cord-loads.ts";

const sum = (list: number[]) => list.reduce((all, one) => all + one, 0);

describe("held weight", () => {
  const { grid, form } = handShade();
  const held = (parts: { part: "face" | "lining" | "bar"; massKg: number }[]) =>
    heldWeight(grid, form, {
      parts: parts.map((part) => ({ ...part, label: part.part })),
      totalKg: 0,
      clothGsm: 0,
      onBoardKg: 0,
    }).value;

  test("the bar hangs on the cords whole", () => {
    expectNear(held([{ part: "bar", massKg: 2 }]), 2 * 9.80665, 1e-12);
  });

  test("the heading carries the headrail cloth and half of the top fold (X1: 3 in and half of 7.6 in of 60 in)", () => {
    const share = 1 - (3 + 7.6 / 2) / 60;
    expectNear(
      held([
        { part: "face", massKg: 1 },
        { part: "lining", massKg: 1 },
      ]),
      2 * share * 9.80665,
      1e-12,
    );
  });
});

describe("shares", () => {
  test("two equal bays, no overhang: 3/8, 10/8, 3/8 (AWC Design Aid 6, fig. 29) against 1/4, 1/2, 1/4", () => {
    const { stiffN, limpN, designN } = cordLoads([0, 500, 1000], 1000, 16);
    for (const [i, share] of [0.1875, 0.625, 0.1875].entries()) expectNear(stiffN[i] ?? 0, share * 16, 1e-9);
    expect(limpN).toEqual([4, 8, 4]);
    expectNear(designN[0] ?? 0, 4, 1e-9);
    expectNear(designN[1] ?? 0, 10, 1e-9);
  });

  test("no cord pushes: under wide overhangs the inner ones go slack and the outer two share", () => {
    const { stiffN } = cordLoads([250, 400, 500, 600, 750], 1000, 10);
    expectNear(stiffN[0] ?? 0, 5, 1e-9);
    expectNear(stiffN[4] ?? 0, 5, 1e-9);
    expect(stiffN.slice(1, 4).map((n) => Math.abs(n) < 1e-9)).toEqual([true, true, true]);
  });

  const anyColumns = fc
    .record({
      width: fc.double({ min: 100, max: 4000, noNaN: true }),
      count: fc.integer({ min: 2, max: 25 }),
      inset: fc.double({ min: 0, max: 0.25, noNaN: true }),
    })
    .map(({ width, count, inset }) => ({
      width,
      columns: Array.from({ length: count }, (_, i) => width * (inset + ((1 - 2 * inset) * i) / (count - 1))),
    }));

  test("add up to the weight, balance it, and none is negative", () => {
    fc.assert(
      fc.property(anyColumns, ({ width, columns }) => {
        const { stiffN, limpN } = cordLoads(columns, width, 20);
        for (const shares of [stiffN, limpN]) {
          expectNear(sum(shares), 20, 1e-6);
          expect(Math.min(...shares)).toBeGreaterThan(-1e-9);
          // About the middle both halves weigh the same.
          expectNear(sum(shares.map((n, i) => n * (columns[i] ?? 0))), (20 * width) / 2, 1e-5 * width);
        }
      }),
    );
  });

  test("Macaulay’s deflections: none at a taut cord, upwards where a cord is slack", () => {
    fc.assert(
      fc.property(anyColumns, ({ width, columns }) => {
        const { stiffN } = cordLoads(columns, width, 20);
        const rise = macaulay(columns, stiffN, width, 20 / width);
        const scale = 20 * width ** 3;
        columns.forEach((column, i) => {
          if ((stiffN[i] ?? 0) > 1e-9) expectNear(rise(column) / scale, 0, 1e-9, `taut cord ${i + 1}`);
          else expect(rise(column) / scale).toBeGreaterThan(-1e-9);
        });
      }),
    );
  });
});

/** EI·v(x) of a beam under these forces, v upwards, held at its two outermost taut cords (Macaulay's brackets). */
function macaulay(columns: number[], forcesN: number[], width: number, q: number): (x: number) => number {
  const bare = (x: number) =>
    sum(forcesN.map((force, i) => (force * Math.max(0, x - (columns[i] ?? 0)) ** 3) / 6)) - (q * x ** 4) / 24;
  const taut = columns.filter((_, i) => (forcesN[i] ?? 0) > 1e-9);
  const [a, b] = [taut[0] ?? 0, taut.at(-1) ?? width];
  const slope = (bare(b) - bare(a)) / (b - a);
  return (x) => bare(x) - bare(a) - slope * (x - a);
}
