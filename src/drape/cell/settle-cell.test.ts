import { describe, expect, test } from "vitest";
import { austrian } from "../../../test/gallery/gathered-windows.ts";
import { type Case, relaxed } from "../../../test/gallery/windows.ts";
import { expectNear } from "../../../test/near.ts";
import { bestOf, type ClothNet, netPattern, settleNet, softened } from "../../mechanics/index.ts";
import { netEnergy } from "../../mechanics/net/net-energy.ts";
import { STYLE_SHAPES } from "../../styles/shapes/index.ts";
import { columnCloth } from "../column-cloth.ts";
import { cellsOf } from "./cell.ts";
import { layLines } from "./cell-grid.ts";
import { cellNet } from "./cell-net.ts";
import { settleCell } from "./settle-cell.ts";
import { touching } from "./touching.ts";

/** The net of a shade’s first cell at one height, with what touches, at rest as far as a picture needs it. */
function atRest({ shade }: Case, raise: number): { net: ClothNet; x: Float64Array; across: number } {
  const { section } = STYLE_SHAPES[shade.style](shade, raise);
  const stretches = columnCloth(shade.form, shade.grid, section);
  const [cell] = cellsOf(shade.form, shade.grid, shade.size.finishedWidthMm).cells;
  if (cell === undefined) throw new Error("no cell");
  const grid = layLines(stretches);
  const across = cell.xMm.length;
  const { x } = settleCell(cell, stretches, { feel: shade.feel, paneMm: shade.board.depthMm });
  const bare = cellNet(cell, grid, shade.feel);
  const weightN = bare.loadN.reduce((sum, newton) => sum + newton, 0);
  const contacts = touching(grid, across, x, {
    thicknessMm: shade.feel.thicknessMm,
    paneMm: shade.board.depthMm,
    stiffness: (8 * weightN) / bare.nodeCount,
  });
  return { net: { ...bare, contacts }, x, across };
}

const CELLS: [string, () => Case, number][] = [
  ["relaxed, half way up", relaxed, 0.5],
  ["Austrian, let down", austrian, 0],
  ["Austrian, half way up", austrian, 0.5],
];

describe.each(CELLS)("the shell of a cell: %s", (_name, make, raise) => {
  const { net, x } = atRest(make(), raise);
  const pattern = netPattern(net);
  const options = { most: 40, sinkMm: 1e-3, reachMm: 20 };

  test("its energy never rises, from soft threads to stiff ones", () => {
    // Blown out of its place by a smooth wave as large as a finger.
    const blown = x.map((mm, k) =>
      net.held[k] === 1 ? mm : mm + 8 * Math.sin(0.7 * Math.floor(k / 3)) * (k % 3 === 2 ? 1 : 0.2),
    );
    for (const share of [0.01, 0.1, 1]) {
      const soft = softened(net, share);
      const energies = [netEnergy(soft, blown)];
      settleNet(soft, pattern, blown, { ...options, most: 12, onStep: (energy) => energies.push(energy) });
      expect(energies.length).toBeGreaterThan(3);
      for (let k = 1; k < energies.length; k++)
        expect(energies[k] as number).toBeLessThanOrEqual(energies[k - 1] as number);
    }
  });

  // Two ways to one force: what holds the cloth, by its pulls there; and all that hangs, by its mass.
  test("board and rings together hold what the cloth weighs", () => {
    const rest = bestOf(settleNet(net, pattern, x, { ...options, most: 120 }));
    const gradient = new Float64Array(rest.length);
    netEnergy(net, rest, gradient);
    let heldN = 0;
    for (let k = 1; k < rest.length; k += 3)
      if (net.held[k] === 1) heldN += (gradient[k] as number) + (net.loadN[k] as number);
    const weightN = net.loadN.reduce((sum, newton, k) => sum + (net.held[k] === 1 ? 0 : newton), 0);
    // The pull on a held place is upwards, against y.
    expectNear(-heldN, weightN, 0.02 * weightN);
  });
});

// Virtual work: the second way is the work that it takes to raise the lowest ring, read from the energy at rest.
// Limp swags on tapes creep by far more than so small a rise: of them the balance of forces alone is held.
test("the energy of a relaxed shade rises with a ring by the force that the ring bears", () => {
  const { net, x, across } = atRest(relaxed(), 0.5);
  const pattern = netPattern(net);
  const ring = lowestRing(net, x, across);
  const tight = { most: 80, sinkMm: 1e-6, reachMm: 20 };
  const at = (liftMm: number) => {
    const from = x.slice();
    from[3 * ring + 1] = (from[3 * ring + 1] as number) - liftMm;
    return bestOf(settleNet(net, pattern, from, tight));
  };
  const [low, middle, high] = [at(-0.02), at(0), at(0.02)];
  const gradient = new Float64Array(middle.length);
  netEnergy(net, middle, gradient);
  const borneN = -(gradient[3 * ring + 1] as number);
  const workN = (netEnergy(net, high) - netEnergy(net, low)) / 0.04;
  expectNear(workN, borneN, 0.02 * Math.abs(borneN));
});

/** The held node of a column that hangs lowest. */
function lowestRing({ held, nodeCount }: ClothNet, x: Float64Array, across: number): number {
  let lowest = across;
  for (let n = across; n < nodeCount; n++)
    if (
      held[3 * n + 1] === 1 &&
      (held[3 * lowest + 1] !== 1 || (x[3 * n + 1] as number) > (x[3 * lowest + 1] as number))
    )
      lowest = n;
  return lowest;
}
