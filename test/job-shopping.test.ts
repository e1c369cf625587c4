import fc from "fast-check";
import { expect, test } from "vitest";
import { jobSchema } from "../src/job/index.ts";
import { plan } from "../src/plan/index.ts";
import { expectNear } from "./near.ts";

const STOCK_BOARD_MM = 2438.4;

const window = fc.record({
  widthMm: fc.integer({ min: 400, max: 2300 }),
  heightMm: fc.integer({ min: 600, max: 2600 }),
  kind: fc.constantFrom("none", "lining-pocket", "strip-pocket"),
});

/** Some windows of one room, and some cloth and board in stock. */
const job = fc
  .record({
    windows: fc.array(window, { minLength: 1, maxLength: 6 }),
    remnantsMm: fc.array(fc.integer({ min: 200, max: 6000 }), { maxLength: 4 }),
    boardsMm: fc.array(fc.integer({ min: 200, max: 2400 }), { maxLength: 3 }),
  })
  .map(({ windows, remnantsMm, boardsMm }) =>
    jobSchema.parse({
      format: "shadewright-job",
      version: 1,
      id: "shopping",
      name: "Shopping",
      units: { system: "metric", ruler: "1 mm" },
      cloths: [{ id: "own", name: "Own", usableWidthMm: 1400, massGsm: 200, pricePerM: 20, soldByMm: 500 }],
      rooms: [
        {
          id: "r",
          name: "Room",
          windows: windows.map(({ widthMm, heightMm, kind }, i) => ({
            id: `w${i}`,
            name: `Window ${i}`,
            opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
            shade: { face: "own", mount: "to-size", making: { ribs: { kind } } },
          })),
        },
      ],
      stock: {
        cloth: remnantsMm.map((lengthMm, i) => ({ id: `c${i}`, cloth: "own", lengthMm })),
        lengths: boardsMm.map((lengthMm, i) => ({ id: `b${i}`, part: "board-1x2", lengthMm })),
      },
    }),
  );

test("a job buys at least what its shades use, and with what is at hand no more than they would alone", () => {
  fc.assert(
    fc.property(job, (made) => {
      const { shades, cost } = plan(made);
      for (const line of cost.shopping) {
        const alone = shades.flatMap((shade) => shade.cost.shopping.filter((one) => one.id === line.id));
        const quantity = alone.reduce((total, one) => total + one.quantity, 0);
        expect(line.quantity, line.label).toBeLessThanOrEqual(quantity + 1e-9);
        const each = alone.reduce((total, one) => total + (one.cost ?? 0), 0);
        // Every line is rounded to the cent by itself.
        expect(line.cost ?? 0, line.label).toBeLessThanOrEqual(each + 0.005 * (alone.length + 1) + 1e-9);
      }
      const cloth = cost.shopping.find((line) => line.id === "cloth-own");
      const usedM = shades.reduce((total, shade) => total + (shade.cloth.layers[0]?.lengthMm ?? 0) / 1000, 0);
      expect((cloth?.quantity ?? 0) + (cloth?.onHand ?? 0)).toBeGreaterThanOrEqual(usedM - 1e-5);
      const steps = ((cloth?.quantity ?? 0) * 1000) / 500;
      expectNear(steps, Math.round(steps), 1e-6, "half metres");
      const board = cost.shopping.find((line) => line.id === "board-board-1x2");
      const stockMm = (made.stock.lengths ?? []).reduce((total, piece) => total + piece.lengthMm, 0);
      const boardsMm = shades.reduce((total, shade) => total + shade.board.lengthMm, 0);
      expect((board?.quantity ?? 0) * STOCK_BOARD_MM + stockMm).toBeGreaterThanOrEqual(boardsMm);
    }),
    { seed: 51, numRuns: 150 },
  );
});
