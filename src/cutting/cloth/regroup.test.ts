import { afterEach, expect, test, vi } from "vitest";
import { clothJob } from "../../../bench/cloth-jobs.ts";
import { chance } from "../chance.ts";
import { BoxDecoder } from "./box-decoder.ts";
import { stepGridOf } from "./grid.ts";
import { LayerDecoder } from "./layer-decoder.ts";
import { layersOn } from "./layers-of.ts";
import { packed } from "./packing.ts";
import { regroup } from "./regroup.ts";

afterEach(() => {
  vi.restoreAllMocks();
});

/** Plans of a group between two pauses, three aims that fail among them: a fraction of a second on any machine. */
const MOST_BETWEEN = 200;

test.each([500, 5000, 20_000])("among %d pieces a pause comes after a few plans of a group", (pieces) => {
  const grid = stepGridOf(clothJob({ seed: 2, pieces, each: 50 }));
  const [bolt] = grid.bolts;
  if (bolt === undefined) throw new Error("no bolt");
  // Each piece its own layer: something is always to be gained, and seldom at once.
  let top = 0;
  const ys = grid.items.map(({ h }) => {
    top += h;
    return top - h;
  });
  const packing = packed(grid, {
    x: new Int32Array(pieces),
    y: Float64Array.from(ys),
    bolt: new Int16Array(pieces),
    w: Int32Array.from(grid.items, ({ w }) => w),
    h: Int32Array.from(grid.items, ({ h }) => h),
  });
  let laid = 0;
  for (const decoder of [LayerDecoder, BoxDecoder]) {
    const { lay } = decoder.prototype;
    vi.spyOn(decoder.prototype, "lay").mockImplementation(function (
      this: LayerDecoder & BoxDecoder,
      limit: number,
    ) {
      laid++;
      return lay.call(this, limit);
    });
  }
  const layers = layersOn(packing, 0);
  const draw = chance(1);
  let counted = 0;
  let all = 0;
  for (let times = 0; times < 6; times++) {
    const group = regroup({ grid, at: 0, stages: 3, draw }, packing, layers);
    for (let step = group.next(); !step.done; step = group.next()) {
      expect(laid).toBeLessThanOrEqual(MOST_BETWEEN);
      all += laid;
      laid = 0;
      counted += step.value;
    }
    all += laid;
    laid = 0;
  }
  expect(all).toBeGreaterThan(300);
  // Counted by the share of all pieces that a group holds, at most 24 of them.
  expect(counted).toBeLessThanOrEqual((all * 24) / pieces + 6);
  expect(counted).toBeGreaterThan(0);
});
