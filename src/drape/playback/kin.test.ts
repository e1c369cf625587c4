import { expect, test } from "vitest";
import { kinOf, SAME_WAY, TURNED_OVER } from "./kin.ts";

/** Uprights of three points each: sideways, down and out at each point, mm. */
function net(uprights: readonly (readonly [number, number, number][])[], held: readonly number[] = []) {
  const [across, along] = [uprights.length, uprights[0]?.length ?? 0];
  const placesMm = new Float64Array(3 * across * along);
  uprights.forEach((points, i) => {
    points.forEach((point, j) => {
      placesMm.set(point, 3 * (j * across + i));
    });
  });
  return {
    net: {
      across,
      along,
      held: Uint8Array.from({ length: across * along }, (_, n) => (held.includes(n) ? 1 : 0)),
    },
    placesMm,
  };
}

const at = (x: number, lean: number, out = 5): [number, number, number][] => [
  [x, 0, 0],
  [x + lean, 100, out],
  [x, 200, 0],
];

// By hand.
test("an upright beside another column is known by its shape, leaning as it does or the other way", () => {
  const { net: own, placesMm } = net([
    at(0, 3),
    at(400, 3),
    at(800, -3),
    at(900, 0),
    at(1000, 0),
    at(1100, 3, 6),
  ]);
  const { first, ways } = kinOf(own, placesMm);
  expect([...first]).toEqual([0, 0, 0, 3, 3, 5]);
  expect([...ways].slice(1, 5)).toEqual([
    SAME_WAY,
    TURNED_OVER,
    SAME_WAY | TURNED_OVER,
    SAME_WAY | TURNED_OVER,
  ]);
});

test("a hem that sags by less than anybody sees leaves uprights alike; more does not", () => {
  const hem = (downMm: number): [number, number, number][] => [
    [400, 0, 0],
    [400, 100, 5],
    [400, 200 + downMm, 0],
  ];
  const { net: own, placesMm } = net([at(0, 0), hem(0.002), hem(0.01)]);
  expect([...kinOf(own, placesMm).first]).toEqual([0, 0, 2]);
});

test("one that is held elsewhere is not alike", () => {
  const { net: own, placesMm } = net([at(0, 0), at(400, 0)], [2]);
  expect([...kinOf(own, placesMm).first]).toEqual([0, 1]);
});
