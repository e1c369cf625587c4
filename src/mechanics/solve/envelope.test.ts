import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../../test/near.ts";
import { conjugateGradients } from "./conjugate-gradients.ts";
import { solveDense } from "./dense.ts";
import { type Envelope, envelopeOf, factorEnvelope, solveEnvelope } from "./envelope.ts";

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

  test("rows of nodes, three that begin alike, factor to the same", () => {
    const nodes = fc.array(fc.tuple(fc.integer({ min: 0, max: 4 }), fc.boolean()), {
      minLength: 2,
      maxLength: 12,
    });
    fc.assert(
      fc.property(nodes, (list) => {
        // A node that is held in one coordinate has two rows, and breaks the threes.
        const first: number[] = [];
        const begins: number[] = [];
        list.forEach(([back, whole], n) => {
          begins.push(first.length);
          const from = begins[Math.max(0, n - back)] as number;
          for (let c = 0; c < (whole ? 3 : 2); c++) first.push(from);
        });
        const matrix = envelopeOf(Int32Array.from(first));
        const dense = first.map(() => new Float64Array(first.length));
        first.forEach((from, i) => {
          for (let j = from; j <= i; j++) {
            const value = i === j ? 60 : Math.sin(7 * i + 3 * j);
            matrix.values[(matrix.start[i] as number) + j] = value;
            (dense[i] as Float64Array)[j] = value;
            (dense[j] as Float64Array)[i] = value;
          }
        });
        const right = Float64Array.from(first, (_, i) => Math.cos(i));
        const found = right.slice();
        expect(solveDense(dense, right)).toBe(true);
        expect(factorEnvelope(matrix)).toBe(true);
        solveEnvelope(matrix, found);
        found.forEach((value, i) => {
          expectNear(value, right[i] as number, 1e-12);
        });
      }),
    );
  });

  test("conjugate gradients come to the same, the diagonal solved at once", () => {
    fc.assert(
      fc.property(drawn, ({ dense, right }) => {
        const expected = right.slice();
        const near = {
          solve: (r: Float64Array) => r.set(r.map((value) => value / 50)),
          addBeyond: (x: Float64Array, sum: Float64Array) => {
            dense.forEach((row, i) => {
              row.forEach((value, j) => {
                if (i !== j) sum[i] = (sum[i] as number) + value * (x[j] as number);
              });
            });
          },
        };
        const found = conjugateGradients(right, near, { share: 1e-13, most: 200 });
        solveDense(
          dense.map((row) => row.slice()),
          expected,
        );
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
