import fc from "fast-check";
import { expect, test } from "vitest";
import { type Chain, keepLengths } from "./keep-lengths.ts";

function chain(
  places: readonly (readonly [number, number, number])[],
  rest: number[],
  held: number[],
): Chain {
  return {
    x: Float64Array.from(places.flat()),
    points: Int32Array.from(places, (_, k) => k),
    restMm: Float64Array.from(rest),
    held: Uint8Array.from(places, (_, k) => (held.includes(k) ? 1 : 0)),
  };
}

test("two links of 5 over a span of 8 meet 3 below it: the right triangle 3, 4, 5", () => {
  const one = chain(
    [
      [0, 0, 0],
      [4, 0.5, 0],
      [8, 0, 0],
    ],
    [5, 5],
    [0, 2],
  );
  expect(keepLengths(one)).toBeLessThan(1e-8);
  expect([...one.x]).toEqual([0, 0, 0, 4, expect.closeTo(3, 6), 0, 8, 0, 0]);
});

test("a chain drawn tight between its ends stays where it is", () => {
  const places = [0, 1, 2, 3].map((k) => [0, 10 * k, 0] as const);
  const one = chain(places, [10, 10, 10], [0, 3]);
  keepLengths(one);
  one.x.forEach((value, k) => {
    expect(value).toBeCloseTo(places.flat()[k] as number, 9);
  });
});

test("any loose chain gets its lengths back, to a millionth, and what is held does not move", () => {
  const link = fc.record({
    out: fc.double({ min: -1, max: 1, noNaN: true }),
    rest: fc.double({ min: 5, max: 30, noNaN: true }),
  });
  fc.assert(
    fc.property(
      fc.array(link, { minLength: 6, maxLength: 30 }),
      fc.double({ min: 0.2, max: 0.9, noNaN: true }),
      (links, share) => {
        const total = links.reduce((sum, { rest }) => sum + rest, 0);
        let down = 0;
        const places = [
          [0, 0, 0] as const,
          ...links.map(({ out, rest }, k) => {
            down += share * rest;
            return [3 * out, down, 6 + 40 * Math.sin((Math.PI * (k + 1)) / links.length)] as const;
          }),
        ];
        const end = places.length - 1;
        const one = chain(
          places,
          links.map(({ rest }) => rest),
          [0, end],
        );
        const before = [...one.x.slice(0, 3), ...one.x.slice(3 * end)];
        expect(Math.hypot(...(places[end] as readonly number[]))).toBeLessThan(total);
        expect(keepLengths(one)).toBeLessThan(1e-6);
        expect([...one.x.slice(0, 3), ...one.x.slice(3 * end)]).toEqual(before);
      },
    ),
  );
});
