import { describe, expect, test } from "vitest";
import { layerLengths } from "./layer-lengths.ts";
import type { PieceType } from "./layer-prices.ts";

const ENDLESS = Number.POSITIVE_INFINITY;

describe("lengths of layer", () => {
  const type = (h: number, row: number): PieceType => ({ w: 1, h, turned: false, row });

  // By hand: sums of two are at most 1.35 times the longest: 135.
  test("are those of the pieces and sums of two that are not much longer, the least first", () => {
    const types = [type(100, 0), type(60, 1), type(35, 2)];
    expect(layerLengths(types, [1, 1, 1], ENDLESS)).toEqual([35, 60, 70, 95, 100, 120, 135]);
    // No sum is longer than the table; a piece may be.
    expect(layerLengths(types, [1, 1, 1], 120)).toEqual([35, 60, 70, 95, 100, 120]);
    expect(layerLengths(types, [1, 1, 1], 119)).toEqual([35, 60, 70, 95, 100]);
    expect(layerLengths(types, [1, 1, 1], 50)).toEqual([35, 60, 100]);
    expect(layerLengths([type(100, 0), type(36, 1)], [1, 1], ENDLESS)).toEqual([36, 72, 100]);
  });

  test("are no more than 48 of pieces and 48 sums: those that occur most often, and in any case the longest", () => {
    // 60 lengths from 1,000 to 1,059, the longest the rarest; the sums of two are far too long.
    const types = Array.from({ length: 60 }, (_, n) => type(1059 - n, n));
    const rising = types.map((_, row) => row + 1);
    const kept = [...Array.from({ length: 48 }, (_, n) => 1000 + n), 1059];
    expect(layerLengths(types, rising, ENDLESS)).toEqual(kept);
    // Of those that occur as often the shorter.
    expect(
      layerLengths(
        types,
        types.map(() => 5),
        ENDLESS,
      ),
    ).toEqual(kept);
    const falling = types.map((_, row) => 60 - row);
    expect(layerLengths(types, falling, ENDLESS)).toEqual(Array.from({ length: 48 }, (_, n) => 1012 + n));
  });

  test("of two pieces are those that come about in the most ways", () => {
    // 49 lengths from 5,000 to 5,048, once each: sums from 10,000 to 10,096.
    const shorts = Array.from({ length: 49 }, (_, n) => type(5000 + n, n + 1));
    const demand = [1, ...shorts.map(() => 1)];
    const lengths = layerLengths([type(9000, 0), ...shorts], demand, ENDLESS);
    const sums = lengths.filter((length) => length > 9000);
    // By hand: 10,000 + s comes about in s / 2 + 1 ways, rounded down, up to the middle at 48, and in fewer again beyond.
    const ways = (s: number) => Math.floor(Math.min(s, 96 - s) / 2) + 1;
    const most = Array.from({ length: 97 }, (_, s) => s).sort((a, b) => ways(b) - ways(a) || a - b);
    expect(sums).toEqual(
      most
        .slice(0, 48)
        .map((s) => 10_000 + s)
        .sort((a, b) => a - b),
    );
  });
});
