import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { solveDense } from "./dense.ts";
import { findRoot } from "./find-root.ts";
import { largestOf } from "./largest-of.ts";
import { solveTridiagonal } from "./tridiagonal.ts";

const entry = fc.double({ min: -10, max: 10, noNaN: true });

describe("small linear systems", () => {
  test("the tridiagonal answer put back gives the right side, for two right sides at once", () => {
    const rows = fc.array(fc.tuple(entry, entry, entry, entry, entry), { minLength: 1, maxLength: 40 });
    fc.assert(
      fc.property(rows, (list) => {
        const column = (k: number) => Float64Array.from(list, (row) => row[k] ?? 0);
        const [lower, upper] = [column(0), column(2)];
        // Away from singular, yet not dominant in every row, so that rows must be exchanged.
        const diagonal = column(1).map(
          (d, i) => (i % 3 === 0 ? 0.1 : 25) + Math.abs(d) + (list.length === 1 ? 1 : 0),
        );
        const sides = [column(3), column(4)];
        const answers = sides.map((side) => side.slice());
        fc.pre(solveTridiagonal(lower.slice(), diagonal.slice(), upper.slice(), answers));
        answers.forEach((x, k) => {
          const size = Math.max(1, ...x.map(Math.abs));
          for (let i = 0; i < x.length; i++) {
            const left = i > 0 ? (lower[i] ?? 0) * (x[i - 1] ?? 0) : 0;
            const right = i + 1 < x.length ? (upper[i] ?? 0) * (x[i + 1] ?? 0) : 0;
            expectNear(left + (diagonal[i] ?? 0) * (x[i] ?? 0) + right, sides[k]?.[i] ?? 0, 1e-10 * size);
          }
        });
      }),
    );
  });

  test("rows are exchanged where a pivot is nothing", () => {
    const b = Float64Array.of(2, 3);
    expect(solveTridiagonal(Float64Array.of(0, 1), Float64Array.of(0, 0), Float64Array.of(1, 0), [b])).toBe(
      true,
    );
    expect([...b]).toEqual([3, 2]);
    expect(solveTridiagonal(Float64Array.of(0, 0), Float64Array.of(0, 1), Float64Array.of(1, 0), [b])).toBe(
      false,
    );
  });

  test("Hilbert’s matrix of order 5 and its published inverse (first column 25, −300, 1050, −1400, 630)", () => {
    const rows = Array.from({ length: 5 }, (_, i) =>
      Float64Array.from({ length: 5 }, (_, j) => 1 / (i + j + 1)),
    );
    const b = Float64Array.of(1, 0, 0, 0, 0);
    expect(solveDense(rows, b)).toBe(true);
    [25, -300, 1050, -1400, 630].forEach((value, i) => {
      expectNear(b[i] ?? 0, value, 1e-8);
    });
    expect(solveDense([Float64Array.of(1, 2), Float64Array.of(2, 4)], Float64Array.of(1, 1))).toBe(false);
  });
});

describe("the largest size in a list", () => {
  test("either sign counts, nothing is 0", () => {
    expect(largestOf(Float64Array.of(1, -3, 2))).toBe(3);
    expect(largestOf(new Float64Array(0))).toBe(0);
  });

  test("what is no number stays none, wherever it stands", () => {
    expect(largestOf(Float64Array.of(Number.NaN, 1, 2))).toBeNaN();
    expect(largestOf(Float64Array.of(1, 2, Number.NaN))).toBeNaN();
  });
});

describe("root", () => {
  test("cos x = x at 0.7390851332151607 (Dottie number, OEIS A003957)", () => {
    const root = findRoot((x) => Math.cos(x) - x, 0, 1);
    expect(root.kind).toBe("converged");
    if (root.kind === "converged") expectNear(root.value, 0.7390851332151607, 1e-15);
  });

  test("steep, flat and far places", () => {
    const at = fc.double({ min: -1000, max: 1000, noNaN: true });
    fc.assert(
      fc.property(at, fc.constantFrom(1, 3, 9), (zero, power) => {
        const root = findRoot((x) => (x - zero) ** power, -2000, 3000);
        if (root.kind !== "converged") throw new Error(root.kind);
        expectNear(root.value, zero, 1e-9);
      }),
    );
  });

  test("no change of sign is said, with both ends", () => {
    expect(findRoot((x) => x * x + 1, -1, 2)).toEqual({ kind: "noBracket", atLow: 2, atHigh: 5 });
  });
});
