import { describe, expect, test } from "vitest";
import { givenCloth } from "../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "./grid.ts";
import type { Bolt, ClothProblem, Piece } from "./index.ts";
import { packed } from "./packing.ts";
import { byRows } from "./rows.ts";

/** Three widths of 300, 100 and 640 mm on a repeat of 320 mm: one, one and two rows. */
function gridOf(
  bolts: readonly Partial<Bolt>[] = [{}],
  piece: Partial<Piece> = {},
  more: Partial<ClothProblem> = {},
) {
  return stepGridOf(
    givenCloth(
      [300, 100, 640].map((lengthMm, n) => ({
        size: [1000, lengthMm],
        start: { alongMm: 40 },
        ...(n === 0 ? piece : {}),
      })),
      bolts.map((bolt) => ({ widthMm: 1000, costPerMm: 2, ...bolt })),
      { repeat: { alongMm: 320, match: "straight" }, ...more },
    ),
  );
}

describe("pieces that all begin at one place of the repeat", () => {
  test("are rounded up to whole rows of plain cloth", () => {
    const rows = byRows(gridOf());
    expect(rows?.grid.items.map(({ h, phaseY }) => [h, phaseY])).toEqual([
      [3200, -1],
      [3200, -1],
      [6400, -1],
    ]);
    expect([rows?.grid.lattice, rows?.grid.stepY]).toEqual([undefined, 3200]);
  });

  test("are so on one endless bolt without flaws that costs something, from no lot, column or join", () => {
    const not = (...given: Parameters<typeof gridOf>) => expect(byRows(gridOf(...given))).toBeUndefined();
    not([{ lengthMm: 5000 }]);
    not([{}, {}]);
    not([{ costPerMm: 0 }]);
    not([{ flaws: [{ xMm: 0, yMm: 0, widthMm: 9, lengthMm: 9 }] }]);
    not([{}], { start: { alongMm: 50 } });
    not([{}], { start: {} });
    not(
      [{}],
      { start: { alongMm: 40, acrossMm: 0 } },
      { repeat: { alongMm: 320, acrossMm: 90, match: "straight" } },
    );
    not([{}], { start: {}, join: { group: "j", index: 0 } });
    not([{}], { lotGroup: "g" }, { boundLots: { g: "x" } });
    expect(byRows(gridOf([{ rowMm: 5 }]))).toBeDefined();
  });

  test("may all begin on the row itself", () => {
    const grid = gridOf([{}]);
    const onRow = { ...grid, items: grid.items.map((item) => ({ ...item, phaseY: 0 })) };
    expect(byRows(onRow)?.grid.items.map(({ h }) => h)).toEqual([3200, 3200, 6400]);
  });

  test("lie behind the first row, as long as they are, the layer that saves most at its end last", () => {
    const grid = gridOf([{ rowMm: 10 }]);
    const rows = byRows(grid);
    if (rows === undefined) throw new Error("not by rows");
    const laid = packed(rows.grid, {
      x: new Int32Array(3),
      y: Float64Array.from([0, 3200, 6400]),
      bolt: new Int16Array(3),
      w: Int32Array.from([10_000, 10_000, 10_000]),
      h: Int32Array.from([3200, 3200, 6400]),
    });
    const plan = rows.finish(laid);
    // 40 below a row that lies at 10: from 50 on. The second, 220 shorter than its row, comes last.
    expect([...plan.y]).toEqual([500, 500 + 3200 + 6400, 500 + 3200]);
    expect([...plan.h]).toEqual([3000, 1000, 6400]);
    expect([...plan.used]).toEqual([500 + 9600 + 1000]);
    expect(plan.cost).toBeCloseTo(2 * 1110, 9);
  });

  test("are aimed at on fewer rows, as many fewer as the saving asks for", () => {
    const grid = gridOf([{ rowMm: 10 }]);
    const rows = byRows(grid);
    if (rows === undefined) throw new Error("not by rows");
    const aim = (usedMm: number, saving: number) => {
      const none = { x: new Int32Array(), y: new Float64Array(), bolt: new Int16Array() };
      const used = Float64Array.from([10 * usedMm]);
      return (
        (rows.aim({ ...none, w: new Int32Array(), h: new Int32Array(), used, cost: 0 }, saving)[0] ?? 0) /
        3200
      );
    };
    // From 50 on 890 mm are two rows and part of a third; a millimetre costs 2.
    expect(aim(940, 1)).toBe(2);
    expect(aim(940, 2 * 249)).toBe(2);
    expect(aim(940, 2 * 251)).toBe(2);
    expect(aim(940, 2 * 569)).toBe(2);
    expect(aim(940, 2 * 571)).toBe(1);
    expect(aim(940, 1e6)).toBe(0);
    // Three whole rows: to save anything is one row less.
    expect(aim(50 + 960, 1)).toBe(2);
    expect(aim(50 + 961, 1)).toBe(3);
  });
});
