import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { foldTableText } from "../../../scripts/fold-table.ts";
import { expectNear } from "../../../test/near.ts";
import { foldOpening, solveOpening } from "./fold-opening.ts";
import { limpFold } from "./limp-fold.ts";

describe("a fold that gives way", () => {
  test("the table is what the solvers give today (`npm run fold-table` writes it)", () => {
    const numbers = (text: string) => [...text.matchAll(/\d+\.\d+/g)].map(Number);
    const [kept, now] = [
      numbers(readFileSync("src/mechanics/elastica/fold-table.ts", "utf8")),
      numbers(foldTableText()),
    ];
    expect(kept.length).toBe(now.length);
    kept.forEach((value, i) => {
      expectNear(value, now[i] ?? Number.NaN, 1e-4 * Math.abs(value));
    });
  });

  test("light and stiff: Euler’s load π²B/l², and half of its own weight besides", () => {
    // A strut with its weight spread along it buckles as if half of it were on top (Timoshenko & Gere §2.12; from memory).
    const push = foldOpening(1).startShare * 2;
    expectNear(push, Math.PI ** 2 / 4 + 1, 0.02);
    const weightless = foldOpening(0.01).startShare * 2 * 0.01;
    expectNear(weightless, Math.PI ** 2 / 4 + 1, 0.02);
  });

  test("limp: what is lifted is the slack alone", () => {
    const limp = limpFold(2, 1.96, 1024).upAtBottomNPerMm / (2 * 1024);
    const found = foldOpening(1024).startShare;
    expect(found).toBeGreaterThan(limp);
    expect(found).toBeLessThan(limp + 0.1);
  });

  test("stiffer cloth needs more push and stands out more", () => {
    let was = { startShare: Number.POSITIVE_INFINITY, outShare: 1 };
    for (let weight = 1; weight <= 4096; weight *= 1.5) {
      const now = foldOpening(weight);
      expect(now.startShare).toBeLessThan(was.startShare + 1e-12);
      expect(now.outShare).toBeLessThan(was.outShare);
      was = now;
    }
  });

  test("between the rows of the table as if it were solved", () => {
    for (const weight of [1.4, 23, 181]) {
      const [table, solved] = [foldOpening(weight), solveOpening(weight)];
      expectNear(table.startShare, solved?.startShare ?? Number.NaN, 0.02 * table.startShare);
      expectNear(table.outShare, solved?.outShare ?? Number.NaN, 0.02 * table.outShare);
    }
  });

  test("what cannot be solved says so", () => expect(solveOpening(1e12)).toBeUndefined());
});
