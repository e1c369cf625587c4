import { describe, expect, test } from "vitest";
import { gatheredBalloon } from "../../../test/gallery/gathered-windows.ts";
import { type Case, pleatedBalloon, relaxed } from "../../../test/gallery/windows.ts";
import { expectNear } from "../../../test/near.ts";
import { bestOf, catenaryOfArc, netPattern, settleNet } from "../../mechanics/index.ts";
import { netEnergy } from "../../mechanics/net/net-energy.ts";
import { cellNet } from "../cell/cell-net.ts";
import type { SettledCell } from "../cell/settled-cell.ts";
import { touching } from "../cell/touching.ts";
import { drapeShade } from "../drape-shade.ts";
import { swingsInMm, swungMm } from "./swing.ts";

const K = 100;
/**
 * A chain of parameter k over half a span of k: its span 2k, its cloth 2k·sinh 1, and its pull its half weight over sinh 1.
 * Closed form of the catenary, y = k·cosh(x/k) with a level pull of k times its weight a length, from memory; chains
 * themselves are held to a table beside `catenary.ts`.
 */
const CHAIN = { spanMm: 2 * K, arcMm: 2 * K * Math.sinh(1), lean: 1 / Math.sinh(1) };

describe("columns that swing on their cords", () => {
  // By hand: tan(lean) = H/V of the catenary, so eyes stand so much farther apart than the ends of a chain that is known.
  test("two columns: each comes in by its cord’s height times 1/sinh u", () => {
    const inMm = 10 * CHAIN.lean;
    const [left, right] = swungMm({
      columnsMm: [0, CHAIN.spanMm + 2 * inMm],
      arcsMm: [CHAIN.arcMm],
      belowEyesMm: 10,
    });
    expectNear(left as number, inMm, 0.1);
    expectNear(right as number, CHAIN.spanMm + inMm, 0.1);
  });

  test("three alike: the middle one is pulled both ways and stays", () => {
    const inMm = 10 * CHAIN.lean;
    const bayMm = CHAIN.spanMm + inMm;
    const places = swungMm({
      columnsMm: [0, bayMm, 2 * bayMm],
      arcsMm: [CHAIN.arcMm, CHAIN.arcMm],
      belowEyesMm: 10,
    });
    [inMm, bayMm, 2 * bayMm - inMm].forEach((mm, i) => {
      expectNear(places[i] as number, mm, 0.1);
    });
  });

  test("none where a rod keeps the columns apart, nor where a shade without one is as wide as its cloth", () => {
    const { form, grid } = gatheredBalloon().shade;
    expect(form.bar).toBeDefined();
    expect(swingsInMm(form, grid, 600)).toBe(0);
    const pleats = pleatedBalloon().shade;
    expect(swingsInMm(pleats.form, pleats.grid, 600)).toBeGreaterThan(50);
    expect(swingsInMm({ ...pleats.form, ease: [] }, pleats.grid, 600)).toBe(0);
  });
});

/** Pull inwards over pull upwards of the rings of a cell’s column that lie at the lowest row. */
function leanOf({ shade }: Case, raise: number): number {
  const { cells } = drapeShade(shade, raise);
  const { cell, grid, x } = cells[0] as SettledCell;
  const gradient = new Float64Array(x.length);
  netEnergy(cellNet(cell, grid, shade.feel), x, gradient);
  const lowestMm = Math.max(...grid.lines.map(({ heldYMm = 0 }) => heldYMm));
  let [inN, upN] = [0, 0];
  grid.lines.forEach(({ heldYMm }, j) => {
    if (heldYMm === undefined || heldYMm < lowestMm - 1) return;
    const at = 3 * (j * cell.xMm.length + (cell.columns[0] as number));
    inN -= gradient[at] as number;
    upN -= gradient[at + 1] as number;
  });
  return inN / upN;
}

/** The chain of the lowest edge: pull over half its weight. */
function chainLean({ shade: { form } }: Case): number {
  const [swag] = form.swags;
  if (swag === undefined) throw new Error("no swag");
  const hangs = catenaryOfArc(swag.toMm - swag.fromMm, swag.arcMm);
  if (hangs.kind !== "hangs") throw new Error(hangs.kind);
  return 1 / Math.tan(hangs.value.endRad);
}

// Two ways to one pull: what the rings of a settled net bear, and the chain of the cloth across.
test.each<[string, () => Case, number]>([
  ["pleated balloon, let down", pleatedBalloon, 0],
  ["gathered balloon, raised", gatheredBalloon, 1],
  ["relaxed, half way up", relaxed, 0.5],
])("%s: rings of a net are pulled inwards as a chain pulls, within a tenth", (_, make, raise) => {
  const chain = chainLean(make());
  expectNear(leanOf(make(), raise), chain, 0.1 * chain);
});

// Which of the two is right: the same net whose threads on the bias give freely hangs as the catenary of its cloth.
test("a pouf of a pleated balloon dips as its catenary where the cloth gives on the bias, and never lower", () => {
  const { shade } = pleatedBalloon();
  const [swag] = shade.form.swags;
  const { cell, grid, x } = drapeShade(shade, 0).cells[0] as SettledCell;
  const across = cell.xMm.length;
  const firm = cellNet(cell, grid, shade.feel);
  const { from, to } = firm.threads;
  const isBias = (t: number) => ![1, across].includes(Math.abs((to[t] as number) - (from[t] as number)));
  const free = {
    ...firm,
    threads: {
      ...firm.threads,
      stiffness: firm.threads.stiffness.map((whole, t) => (isBias(t) ? 1e-3 * whole : whole)),
    },
  };
  const weightN = firm.loadN.reduce((sum, newton) => sum + newton, 0);
  let places = x;
  for (let round = 0; round < 10; round++) {
    const contacts = touching(grid, across, places, {
      thicknessMm: shade.feel.thicknessMm,
      paneMm: shade.board.depthMm,
      wallMm: cell.fromMm,
      stiffness: (8 * weightN) / firm.nodeCount,
    });
    const options = { most: 40, sinkMm: 1e-3, reachMm: 60 };
    places = bestOf(settleNet({ ...free, contacts }, netPattern(free), places, options));
  }
  const hem = 3 * (grid.lines.length - 1) * across;
  const dipMm = (of: Float64Array) => (of[hem + 3 * (across - 1) + 1] as number) - (of[hem + 1] as number);
  const catenaryMm = swag?.sagMm ?? 0;
  expectNear(dipMm(places), catenaryMm, 0.07 * catenaryMm);
  expect(dipMm(x)).toBeLessThan(catenaryMm);
});
