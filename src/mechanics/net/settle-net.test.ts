import { describe, expect, test } from "vitest";
import { casesOf, given } from "../../../test/mechanics/physics-cases.ts";
import { expectNear } from "../../../test/near.ts";
import { catenaryOfArc } from "../catenary.ts";
import type { Envelope } from "../solve/envelope.ts";
import { bestOf } from "../solve/outcome.ts";
import { type ClothNet, noContacts } from "./net.ts";
import { NetBuilder } from "./net-builder.ts";
import { netEnergy } from "./net-energy.ts";
import { fillMatrix, netPattern } from "./net-matrix.ts";
import { settleNet, softened } from "./settle-net.ts";

const LENGTH_MM = 100;
const STEPS = { most: 120, sinkMm: 1e-10, reachMm: 30 };

/** A strip 1 mm wide, clamped level at one end and hanging from there: λ = w L³ / B with B = 1 N·mm. */
function cantilever(
  lambda: number,
  n: number,
): { out: number; down: number; net: ClothNet; x: Float64Array } {
  const h = LENGTH_MM / n;
  const weight = lambda / LENGTH_MM ** 3;
  const builder = new NetBuilder(n + 1);
  const x = new Float64Array(3 * (n + 1));
  const membrane = 1e5 * Math.max(weight * LENGTH_MM, 1 / LENGTH_MM ** 2);
  for (let i = 0; i <= n; i++) {
    x[3 * i] = i * h;
    builder.load(i, 1, weight * h * (i === 0 || i === n ? 0.5 : 1));
    if (i > 0) builder.thread(i - 1, i, h, membrane / h, 1);
    if (i > 0 && i < n) builder.bend([i - 1, i, i + 1], [h, h], h);
  }
  builder.clampBend(0, 1, h, [1, 0, 0], h / 2);
  builder.hold(0, [0, 1, 2]);
  const net = builder.build(noContacts());
  const pattern = netPattern(net);
  const soft = bestOf(settleNet(softened(net, 1e-3), pattern, x, { ...STEPS, sinkMm: 1e-3 }));
  const half = bestOf(settleNet(softened(net, 0.03), pattern, soft, { ...STEPS, sinkMm: 1e-3 }));
  const found = settleNet(net, pattern, half, STEPS);
  expect(found.kind).toBe("converged");
  const at = bestOf(found);
  return { out: (at[3 * n] as number) / LENGTH_MM, down: (at[3 * n + 1] as number) / LENGTH_MM, net, x };
}

/** A matrix, not its factor, times x. */
function timesEnvelope({ size, first, start, values }: Envelope, x: Float64Array): Float64Array {
  const sum = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    for (let j = first[i] as number; j <= i; j++) {
      const value = values[(start[i] as number) + j] as number;
      sum[i] = (sum[i] as number) + value * (x[j] as number);
      if (j < i) sum[j] = (sum[j] as number) + value * (x[i] as number);
    }
  }
  return sum;
}

describe("a net at rest", () => {
  // Heavy elastica, computed outside this project in two ways (see the file of cases).
  test.each(casesOf("heavy_elastica_cantilever"))(
    "a clamped strip hangs as the heavy elastica: %s",
    (_name, one) => {
      const lambda = given(one.inputs, "lambda=wL^3/B");
      const { out, down } = cantilever(lambda, lambda > 200 ? 240 : lambda > 20 ? 80 : 20);
      const [x, y] = [given(one.outputs, "x_over_L"), given(one.outputs, "y_over_L")];
      expectNear(out, x, 0.005 * x, "reach");
      expectNear(down, y, 0.005 * y, "drop");
    },
  );

  test("the error falls by four as the spacing is halved: second order", () => {
    const [, eight] =
      casesOf("heavy_elastica_cantilever").find(([, one]) => one.inputs["lambda=wL^3/B"] === 8) ?? [];
    if (eight === undefined) throw new Error("no case for 8");
    const errors = [20, 40, 80].map((n) => cantilever(8, n).down - given(eight.outputs, "y_over_L"));
    for (const k of [0, 1]) {
      const ratio = (errors[k] as number) / (errors[k + 1] as number);
      expect(ratio).toBeGreaterThan(3.3);
      expect(ratio).toBeLessThan(4.7);
    }
  });

  test("a line without stiffness hangs in the catenary, as deep within half a per cent", () => {
    const [span, arc, n] = [300, 360, 60];
    const builder = new NetBuilder(n + 1);
    const x = new Float64Array(3 * (n + 1));
    for (let i = 0; i <= n; i++) {
      x[3 * i] = (span * i) / n;
      x[3 * i + 1] = 20 * Math.sin((Math.PI * i) / n);
      builder.load(i, 1, 1e-4);
      // A thousandth of what bends the cloth of a shade: it holds the links in line where they hang slack.
      if (i > 0 && i < n) builder.bend([i - 1, i, i + 1], [arc / n, arc / n], 1e-4);
      if (i > 0) builder.thread(i - 1, i, arc / n, 5, 1);
      builder.hold(i, i === 0 || i === n ? [0, 1, 2] : [2]);
    }
    const found = bestOf(
      settleNet(builder.build(noContacts()), netPattern(builder.build(noContacts())), x, STEPS),
    );
    const hangs = catenaryOfArc(span, arc);
    if (hangs.kind !== "hangs") throw new Error(hangs.kind);
    expectNear(found[3 * (n / 2) + 1] as number, hangs.value.sagMm, 0.005 * hangs.value.sagMm);
  });

  test("no step raises the energy, and what holds the net does not move", () => {
    const { net, x } = cantilever(8, 20);
    const energies = [netEnergy(net, x)];
    const found = bestOf(
      settleNet(net, netPattern(net), x, { ...STEPS, onStep: (energy) => energies.push(energy) }),
    );
    expect(energies.length).toBeGreaterThan(5);
    for (let k = 1; k < energies.length; k++)
      expect(energies[k] as number).toBeLessThanOrEqual(energies[k - 1] as number);
    expect([...found.slice(0, 3)]).toEqual([0, 0, 0]);
  });

  /** A patch with every kind of part: threads stretched and slack, bends, a mirror, a clamp, cloth on cloth and on the pane. */
  function patch(): { net: ClothNet; x: Float64Array } {
    const builder = new NetBuilder(9);
    for (let j = 0; j < 3; j++) {
      for (let i = 0; i < 3; i++) {
        const n = 3 * j + i;
        builder.load(n, 1, 0.01 * (n + 1));
        if (i > 0) builder.thread(n - 1, n, i === 1 ? 9 : 13, 2, 0);
        if (j > 0) builder.thread(n - 3, n, 10, 3, 1);
      }
      builder.bend([3 * j, 3 * j + 1, 3 * j + 2], [9, 13], 40);
      builder.mirrorBend(3 * j + 1, 3 * j + 2, 13, 20);
    }
    builder.clampBend(0, 3, 10, [0, 1, 0], 30);
    const net = builder.build({
      nodes: Int32Array.from([0, 4, 7, 8, -1, -1, 2, 5, 8]),
      share: Float64Array.from([0.3, 0, 0.8]),
      gapMm: Float64Array.from([1, -4, 0.5]),
      stiffness: 0.7,
      softMm: 2,
    });
    const x = Float64Array.from({ length: 27 }, (_, k) => {
      const n = Math.floor(k / 3);
      const place = k % 3 === 0 ? 11 * (n % 3) : k % 3 === 1 ? 11 * Math.floor(n / 3) : -3;
      return place + 1.5 * Math.sin(12.9898 * (k + 1));
    });
    return { net, x };
  }

  test("its forces are the slope of its energy, by central differences", () => {
    const { net, x } = patch();
    const gradient = new Float64Array(x.length);
    netEnergy(net, x, gradient);
    const step = 1e-5;
    for (let k = 0; k < x.length; k++) {
      const [more, less] = [1, -1].map((way) =>
        netEnergy(
          net,
          x.map((v, i) => (i === k ? v + way * step : v)),
        ),
      );
      expectNear(
        gradient[k] as number,
        ((more as number) - (less as number)) / (2 * step),
        1e-6,
        `coordinate ${k}`,
      );
    }
  });

  test("its matrix is the slope of its forces where every thread is taut and nothing touches but the pane", () => {
    const { net: whole, x } = patch();
    const threads = { ...whole.threads, restMm: whole.threads.restMm.map((rest) => 0.6 * rest) };
    const contacts = {
      ...whole.contacts,
      nodes: Int32Array.from([8, -1, -1]),
      share: Float64Array.from([0]),
      gapMm: Float64Array.from([-1]),
    };
    const net = { ...whole, threads, contacts };
    const pattern = netPattern(net);
    fillMatrix(net, pattern, x);
    const way = Float64Array.from({ length: 27 }, (_, k) => Math.cos(3 * k));
    const product = timesEnvelope(pattern.matrix, way);
    const step = 1e-5;
    const forces = (side: number) => {
      const gradient = new Float64Array(27);
      netEnergy(
        net,
        x.map((v, i) => v + side * step * (way[i] as number)),
        gradient,
      );
      return gradient;
    };
    const [more, less] = [forces(1), forces(-1)];
    product.forEach((value, k) => {
      expectNear(value, ((more[k] as number) - (less[k] as number)) / (2 * step), 1e-5, `coordinate ${k}`);
    });
  });

  test("a node that is held in part beside one that is held altogether keeps what ties its own coordinates", () => {
    const builder = new NetBuilder(2);
    builder.hold(0, [0, 1, 2]);
    builder.hold(1, [0]);
    builder.thread(0, 1, 4, 3, 1);
    const net = builder.build(noContacts());
    const pattern = netPattern(net);
    // Stretched from 4 to 5 along (0, 3, 4) / 5: k·u·uᵀ + (T/ℓ)·(1 − u·uᵀ) with k = 3, T = 3·1, by hand.
    fillMatrix(net, pattern, Float64Array.from([0, 0, 0, 0, 3, 4]));
    const [first, second] = [
      timesEnvelope(pattern.matrix, Float64Array.from([1, 0])),
      timesEnvelope(pattern.matrix, Float64Array.from([0, 1])),
    ];
    expectNear(first[0] as number, 3 * 0.36 + 0.6 * 0.64, 1e-12);
    expectNear(first[1] as number, (3 - 0.6) * 0.48, 1e-12);
    expectNear(second[1] as number, 3 * 0.64 + 0.6 * 0.36, 1e-12);
  });

  test("cloth that leans on the pane, or on cloth behind it, stays before it", () => {
    const builder = new NetBuilder(2);
    for (const n of [0, 1]) {
      builder.load(n, 2, -0.1);
      builder.hold(n, [0, 1]);
    }
    const net = builder.build({
      nodes: Int32Array.from([0, 1, 1, 1, -1, -1]),
      share: Float64Array.from([0, 0]),
      gapMm: Float64Array.from([2, -10]),
      stiffness: 1,
      softMm: 0.5,
    });
    const found = bestOf(settleNet(net, netPattern(net), Float64Array.from([0, 0, -8, 0, 0, -9.9]), STEPS));
    // Each push balances what leans there: 0.2 N on the pane, 0.1 N between the two.
    expectNear(found[5] as number, -10 + 0.5 - Math.sqrt(2 * 0.5 * 0.2), 1e-4);
    expectNear((found[2] as number) - (found[5] as number), 2 + 0.5 - Math.sqrt(2 * 0.5 * 0.1), 1e-4);
  });
});
