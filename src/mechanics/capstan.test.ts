import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { expectNear } from "../../test/near.ts";
import { capstanRatio, turnRad } from "./capstan.ts";

const DEG = Math.PI / 180;

/** T2/T1 at 90°: Euler–Eytelwein, T2/T1 = e^(μθ), as in Morton & Hearle equation 25.2; five decimals. */
const QUARTER_TURN = {
  source: "Morton & Hearle, Physical Properties of Textile Fibres, ch. 25, eq. 25.2, at 90°",
  tol: 5e-6,
  rows: [
    [0.1, 1.17009],
    [0.15, 1.26569],
    [0.2, 1.36911],
    [0.24, 1.45789],
    [0.25, 1.48097],
    [0.3, 1.60198],
    [0.35, 1.73287],
  ],
} as const;

/** Printed table: turns, tension ratio, and what holds 100 kg. */
const PRINTED = {
  source: "Delaney, Physics for Roping Technicians (2022), p. 88, μ = 0.175",
  friction: 0.175,
  rows: [
    [0.25, 1.32, 75.97],
    [0.5, 1.73, 57.71],
    [1, 3.0, 33.3],
    [2, 9.02, 11.09],
    [3, 27.08, 3.69],
  ],
} as const;

/** Force to raise and to lower one load over one host, kg, and the μ printed beside them. */
const MEASURED = {
  source: "Delaney, Physics for Roping Technicians (2022), p. 88, rope on bars and tubes",
  tol: 0.005,
  rows: [
    [98, 50, 90, 0.21],
    [103, 47, 90, 0.25],
    [125, 37, 180, 0.19],
    [140, 31, 180, 0.24],
    [140, 15, 180, 0.36],
  ],
} as const;

describe("capstan", () => {
  test.each(QUARTER_TURN.rows)(
    `μ %f at a quarter turn gives %f (${QUARTER_TURN.source})`,
    (friction, ratio) => {
      expectNear(capstanRatio(friction, 90 * DEG), ratio, QUARTER_TURN.tol);
    },
  );

  test.each(PRINTED.rows)(`%f turns give %f (${PRINTED.source})`, (turns, ratio, heldKg) => {
    const found = capstanRatio(PRINTED.friction, turns * 360 * DEG);
    expectNear(found, ratio, 0.005);
    expectNear(100 / found, heldKg, 0.005);
  });

  test.each(MEASURED.rows)(
    `raising %f, lowering %f over %f° (${MEASURED.source})`,
    (up, down, deg, friction) => {
      // Up over down is the ratio twice over, once against friction and once with it.
      const ratio = Math.sqrt(up / down);
      expectNear(ratio, capstanRatio(friction, deg * DEG), MEASURED.tol * deg * DEG * ratio);
    },
  );
});

describe("turn", () => {
  const at = (x: number, y: number, z = 0) => ({ x, y, z });

  test("a right angle and a straight run", () => {
    expectNear(turnRad(at(0, 0), at(3, 0), at(3, 9)), Math.PI / 2, 1e-15);
    expectNear(turnRad(at(0, 0), at(3, 0), at(3, 0, -9)), Math.PI / 2, 1e-15);
    expect(turnRad(at(0, 0), at(3, 1), at(9, 3))).toBe(0);
  });

  test("turns of a closed polygon add up to one round (exterior angles of a convex polygon)", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 30 }),
        fc.double({ min: 0.1, max: 3, noNaN: true }),
        (sides, squash) => {
          const corner = (i: number) => ({
            x: Math.cos((2 * Math.PI * i) / sides),
            y: squash * Math.sin((2 * Math.PI * i) / sides),
            z: Math.cos((2 * Math.PI * i) / sides),
          });
          let sum = 0;
          for (let i = 0; i < sides; i++) sum += turnRad(corner(i), corner(i + 1), corner(i + 2));
          expectNear(sum, 2 * Math.PI, 1e-9);
        },
      ),
    );
  });
});
