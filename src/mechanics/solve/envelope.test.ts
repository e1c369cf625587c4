import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { conjugateGradients } from "./conjugate-gradients.ts";
import { solveDense } from "./dense.ts";
import { type Envelope, envelopeOf, factorEnvelope, multiplyEnvelope, solveEnvelope } from "./envelope.ts";

interface Drawn {
  matrix: Envelope;
  dense: Float64Array[];
  right: Float64Array;
}

/** A symmetric matrix with a ragged envelope, its diagonal larger than the rest of its row: positive definite. */
const drawn: fc.Arbitrary<Drawn> = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 6 }), fc.double({ min: -3, max: 3, noNaN: true })), {
    minLength: 1,
    maxLength: 30,
  })
  .map((rows) => {
    const n = rows.length;
    const matrix = envelopeOf(Int32Array.from(rows, ([back], i) => Math.max(0, i - back)));
    const dense = Array.from({ length: n }, () => new Float64Array(n));
    for (let i = 0; i < n; i++) {
      for (let j = matrix.first[i] as number; j <= i; j++) {
        const value = i === j ? 50 : Math.sin(17 * i + 5 * j + (rows[i]?.[1] ?? 0));
        matrix.values[(matrix.start[i] as number) + j] = value;
        (dense[i] as Float64Array)[j] = value;
        (dense[j] as Float64Array)[i] = value;
      }
    }
    return { matrix, dense, right: Float64Array.from(rows, ([, value]) => value) };
  });

describe("matrices by their envelope", () => {
  test("the factor solves what dense elimination solves", () => {
    fc.assert(
      fc.property(drawn, ({ matrix, dense, right }) => {
        const expected = right.slice();
        expect(solveDense(dense, expected)).toBe(true);
        expect(factorEnvelope(matrix)).toBe(true);
        const found = right.slice();
        solveEnvelope(matrix, found);
        found.forEach((value, i) => {
          expectNear(value, expected[i] as number, 1e-12);
        });
      }),
    );
  });

  test("conjugate gradients with a diagonal preconditioner come to the same", () => {
    fc.assert(
      fc.property(drawn, ({ matrix, dense, right }) => {
        const expected = right.slice();
        solveDense(dense, expected);
        const multiply = (x: Float64Array) => {
          const sum = new Float64Array(x.length);
          multiplyEnvelope(matrix, x, sum);
          return sum;
        };
        const scale = (r: Float64Array) => r.set(r.map((value) => value / 50));
        const found = conjugateGradients(right, multiply, scale, { share: 1e-13, most: 200 });
        found.forEach((value, i) => {
          expectNear(value, expected[i] as number, 1e-9);
        });
      }),
    );
  });

  test("a matrix that is not positive definite is refused", () => {
    const matrix = envelopeOf(Int32Array.from([0, 0]));
    matrix.values.set([1, 2, 1]);
    expect(factorEnvelope(matrix)).toBe(false);
  });
});
