import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../test/near.ts";
import { type ContinuousBeam, continuousBeam } from "./continuous-beam.ts";

const equalBays = (bays: number): ContinuousBeam => ({
  supportsMm: Array.from({ length: bays + 1 }, (_, i) => i * 1000),
  fromMm: 0,
  toMm: bays * 1000,
  loadNPerMm: 0.001,
});

/** Reactions as shares of w·l. */
const PUBLISHED = [
  {
    source: "AWC Design Aid 6 (2007), fig. 29: two equal spans, 3/8, 10/8, 3/8; moment −wl²/8",
    bays: 2,
    reactions: [0.375, 1.25, 0.375],
    moments: [0, -1 / 8, 0],
  },
  {
    source: "Beam tables, three equal spans: 0.4, 1.1, 1.1, 0.4; moment −wl²/10",
    bays: 3,
    reactions: [0.4, 1.1, 1.1, 0.4],
    moments: [0, -1 / 10, -1 / 10, 0],
  },
];

describe("continuous beam", () => {
  test.each(PUBLISHED)("$source", ({ bays, reactions, moments }) => {
    const found = continuousBeam(equalBays(bays));
    reactions.forEach((share, i) => {
      expectNear(found.reactionsN[i] ?? Number.NaN, share, 1e-12);
    });
    moments.forEach((share, i) => {
      expectNear((found.momentsNmm[i] ?? Number.NaN) / 1000, share, 1e-12);
    });
  });

  test("overhang under full load, AWC Design Aid 6 fig. 18: w 10 N/m, l 1 m, a 0.2 m gives 4.8 and 7.2 N", () => {
    const { reactionsN } = continuousBeam({ supportsMm: [0, 1000], fromMm: 0, toMm: 1200, loadNPerMm: 0.01 });
    expectNear(reactionsN[0] ?? Number.NaN, 4.8, 1e-12);
    expectNear(reactionsN[1] ?? Number.NaN, 7.2, 1e-12);
  });

  test("one support carries all", () => {
    const one = continuousBeam({ supportsMm: [300], fromMm: 0, toMm: 800, loadNPerMm: 0.02 });
    expectNear(one.reactionsN[0] ?? Number.NaN, 16, 1e-12);
  });

  test.each([[[0, 0, 500]], [[500, 400]], [[-1, 500]], [[0, 1001]]])(
    "supports %j are refused",
    (supportsMm) => {
      expect(() => continuousBeam({ supportsMm, fromMm: 0, toMm: 1000, loadNPerMm: 1 })).toThrow(
        "invalid supportsMm",
      );
    },
  );

  test("agrees with finite elements on any bays and overhangs", () => {
    fc.assert(
      fc.property(anyBeam, (beam) => {
        const { reactionsN } = continuousBeam(beam);
        const total = beam.loadNPerMm * (beam.toMm - beam.fromMm);
        const independent = finiteElementReactions(beam);
        reactionsN.forEach((reaction, i) => {
          expectNear(reaction, independent[i] ?? Number.NaN, 1e-6 * total, `support ${i}`);
        });
      }),
      { numRuns: 200 },
    );
  });

  test("reactions balance the load and its moment", () => {
    fc.assert(
      fc.property(anyBeam, (beam) => {
        const { reactionsN } = continuousBeam(beam);
        const total = beam.loadNPerMm * (beam.toMm - beam.fromMm);
        const length = beam.toMm - beam.fromMm;
        const sum = reactionsN.reduce((all, reaction) => all + reaction, 0);
        const moment = reactionsN.reduce((all, r, i) => all + r * (beam.supportsMm[i] ?? Number.NaN), 0);
        expectNear(sum, total, 1e-9 * total);
        expectNear(moment, (total * (beam.fromMm + beam.toMm)) / 2, 1e-9 * total * length);
      }),
    );
  });
});

const overhang = fc.oneof(fc.constant(0), fc.double({ min: 1, max: 300, noNaN: true }));
const anyBeam = fc
  .record({
    left: overhang,
    spans: fc.array(fc.double({ min: 50, max: 800, noNaN: true }), { minLength: 1, maxLength: 8 }),
    right: overhang,
    load: fc.double({ min: 0.001, max: 2, noNaN: true }),
  })
  .map(({ left, spans, right, load }): ContinuousBeam => {
    const supportsMm = [left];
    for (const span of spans) supportsMm.push((supportsMm.at(-1) ?? 0) + span);
    return { supportsMm, fromMm: 0, toMm: (supportsMm.at(-1) ?? 0) + right, loadNPerMm: load };
  });

/**
 * Second route: Euler–Bernoulli beam elements with cubic shape functions between the supports and the ends
 * (exact at the nodes under a uniform load), dense Gauss elimination, supports as prescribed deflections.
 * Shares no line of thought with the three-moment equation.
 */
function finiteElementReactions({ supportsMm, fromMm, toMm, loadNPerMm }: ContinuousBeam): number[] {
  const nodes = [...new Set([fromMm, ...supportsMm, toMm])];
  const size = nodes.length * 2;
  const stiffness = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const load = new Array<number>(size).fill(0);
  // Lengths in metres and EI = 1 keep the matrix well scaled.
  for (let e = 0; e + 1 < nodes.length; e++) {
    const l = ((nodes[e + 1] ?? 0) - (nodes[e] ?? 0)) / 1000;
    const q = loadNPerMm * 1000;
    const k = [
      [12 / l ** 3, 6 / l ** 2, -12 / l ** 3, 6 / l ** 2],
      [6 / l ** 2, 4 / l, -6 / l ** 2, 2 / l],
      [-12 / l ** 3, -6 / l ** 2, 12 / l ** 3, -6 / l ** 2],
      [6 / l ** 2, 2 / l, -6 / l ** 2, 4 / l],
    ];
    const f = [(q * l) / 2, (q * l * l) / 12, (q * l) / 2, (-q * l * l) / 12];
    for (let i = 0; i < 4; i++) {
      load[2 * e + i] = (load[2 * e + i] ?? 0) + (f[i] ?? 0);
      for (let j = 0; j < 4; j++) {
        const row = stiffness[2 * e + i];
        if (row) row[2 * e + j] = (row[2 * e + j] ?? 0) + (k[i]?.[j] ?? 0);
      }
    }
  }
  const held = supportsMm.map((support) => 2 * nodes.indexOf(support));
  const free = [...Array(size).keys()].filter((dof) => !held.includes(dof));
  const solution = gauss(
    free.map((i) => free.map((j) => stiffness[i]?.[j] ?? 0)),
    free.map((i) => load[i] ?? 0),
  );
  const displacement = new Array<number>(size).fill(0);
  free.forEach((dof, i) => {
    displacement[dof] = solution[i] ?? Number.NaN;
  });
  return held.map((dof) => {
    const inner = (stiffness[dof] ?? []).reduce((sum, k, j) => sum + k * (displacement[j] ?? 0), 0);
    return (load[dof] ?? 0) - inner;
  });
}

function gauss(matrix: number[][], right: number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  const n = rows.length;
  for (let c = 0; c < n; c++) {
    let best = c;
    for (let r = c; r < n; r++) if (Math.abs(rows[r]?.[c] ?? 0) > Math.abs(rows[best]?.[c] ?? 0)) best = r;
    [rows[c], rows[best]] = [rows[best] ?? [], rows[c] ?? []];
    const pivot = rows[c] ?? [];
    for (let r = c + 1; r < n; r++) {
      const row = rows[r] ?? [];
      const factor = (row[c] ?? 0) / (pivot[c] ?? Number.NaN);
      for (let k = c; k <= n; k++) row[k] = (row[k] ?? 0) - factor * (pivot[k] ?? 0);
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let r = n - 1; r >= 0; r--) {
    const row = rows[r] ?? [];
    let sum = row[n] ?? 0;
    for (let k = r + 1; k < n; k++) sum -= (row[k] ?? 0) * (x[k] ?? 0);
    x[r] = sum / (row[r] ?? Number.NaN);
  }
  return x;
}
