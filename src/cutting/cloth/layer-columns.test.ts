import { afterEach, describe, expect, test, vi } from "vitest";
import { endOf } from "../../../test/cutting/end-of.ts";
import { givenCloth } from "../../../test/cutting/given-cloth.ts";
import { stepGridOf } from "./grid.ts";
import { layerColumns } from "./layer-columns.ts";
import { LayerPrices } from "./layer-prices.ts";

afterEach(() => {
  vi.restoreAllMocks();
});

/** So many sizes, each so often, on cloth of 100 mm. */
const gridOf = (sizes: number, each: number) =>
  stepGridOf(
    givenCloth(
      Array.from({ length: sizes * each }, (_, n) => {
        const k = n % sizes;
        return { size: [17 + ((k * 13) % 40) + k / 10, 21 + ((k * 29) % 50)] as const };
      }),
    ),
  );

const WIDTH = 1000;

/** How often each row of the demand lies in layers, and in the rest. */
function countsOf({ layers, types, rest }: ReturnType<typeof plan>) {
  const counts = [...rest];
  for (const { columns } of layers) {
    for (const { types: stack } of columns) {
      for (const type of stack) {
        const row = types[type]?.row ?? -1;
        counts[row] = (counts[row] ?? 0) + 1;
      }
    }
  }
  return counts;
}
const plan = (sizes: number, each: number) => endOf(layerColumns(gridOf(sizes, each), WIDTH));

/** Worths of the rows, and what was left of each, whenever layers were priced. */
function askedOf(): { worths: number[]; rest: number[] }[] {
  const asked: { worths: number[]; rest: number[] }[] = [];
  const { setWorths } = LayerPrices.prototype;
  vi.spyOn(LayerPrices.prototype, "setWorths").mockImplementation(function (this: LayerPrices, rows, wanted) {
    asked.push({ worths: Array.from(rows), rest: Array.from(wanted) });
    setWorths.call(this, rows, wanted);
  });
  return asked;
}

describe("layers of many sizes", () => {
  test.each([
    [96, 2],
    [97, 2],
    [200, 2],
  ])("of %d sizes hold each of %d pieces once", (sizes, each) => {
    const found = plan(sizes, each);
    const counts = countsOf(found);
    expect(counts).toEqual(Array.from({ length: sizes }, () => each));
    // Twelve pieces at the most are left of each part of 96 sizes.
    expect(found.rest.reduce((a, b) => a + b, 0)).toBeLessThanOrEqual(12 * Math.ceil(sizes / 96));
    for (const { columns } of found.layers)
      expect(columns.reduce((sum, { width }) => sum + width, 0)).toBeLessThanOrEqual(WIDTH);
  });

  test("are looked for among 96 sizes at a time, every second of them where there are more", () => {
    const asked = askedOf();
    plan(97, 1);
    const rows = Array.from({ length: 97 }, (_, row) => row);
    const wanted = asked.map(({ rest }) => rows.filter((row) => rest[row] !== 0));
    expect(wanted[0]).toEqual(rows.filter((row) => row % 2 === 0));
    expect(wanted).toContainEqual(rows.filter((row) => row % 2 === 1));
  });
});

describe("layers that ask for more of a size than is left", () => {
  test("are asked for with those sizes worth six tenths, four times at the most, and only where some lack", () => {
    const asked = askedOf();
    plan(20, 3);
    const shares = asked
      .slice(1)
      .map(({ worths }, n) => worths.map((one, row) => one / (asked[n]?.worths[row] || one || 1)));
    const isLowered = (all: readonly number[]) =>
      all.some((share) => Math.abs(share - 0.6) < 1e-12) &&
      all.every((share) => share === 1 || share === 0 || Math.abs(share - 0.6) < 1e-12);
    const runs = shares
      .map((all) => (isLowered(all) ? "x" : " "))
      .join("")
      .split(" ");
    const longest = Math.max(...runs.map((run) => run.length));
    expect(longest).toBeGreaterThan(0);
    expect(longest).toBeLessThanOrEqual(4);
  });
});

/** Counts and lengths of our own of today: the test does no more than notice that more is needed. */
test.each([
  [20, 3, 22, 25, 1058],
  [30, 3, 39, 47, 1573],
  [40, 2, 41, 50, 1322],
])(
  "of %d sizes, %d of each, layers are found in %d rounds and %d tries, of %d mm together",
  (sizes, each, rounds, tries, lengthMm) => {
    const asked = askedOf();
    const steps = layerColumns(gridOf(sizes, each), WIDTH);
    let paused = 0;
    let step = steps.next();
    for (; !step.done; step = steps.next()) paused++;
    expect(paused).toBeLessThanOrEqual(rounds);
    expect(asked.length).toBeLessThanOrEqual(tries);
    const length = step.value.layers.reduce((sum, one) => sum + one.length, 0);
    expect(length).toBeLessThanOrEqual(10 * lengthMm);
  },
);
