import { expect, test } from "vitest";
import { FitMasks } from "./fit-masks.ts";

const item = (w: number, h: number, turns = false) => ({ w, h, turns });

/** Places, in their order, of the items that fit into a space and are not skipped. */
function placesOf(masks: FitMasks, w: number, h: number): number[] {
  const places: number[] = [];
  for (let place = masks.nextFit(w, h, 0); place >= 0; place = masks.nextFit(w, h, place + 1))
    places.push(place);
  return places;
}

// By hand: 4 × 3, 5 × 2, and 4 × 3 once more.
test("items are found at their places where they fit, open, after any exchange", () => {
  const masks = new FitMasks([item(4, 3), item(5, 2), item(4, 3)]);
  masks.openAll();
  expect([
    placesOf(masks, 5, 3),
    placesOf(masks, 4, 3),
    placesOf(masks, 5, 2),
    placesOf(masks, 3, 9),
  ]).toEqual([[0, 1, 2], [0, 2], [1], []]);
  masks.swap(0, 1);
  expect([...masks.order]).toEqual([1, 0, 2]);
  expect([placesOf(masks, 4, 3), placesOf(masks, 5, 2)]).toEqual([[1, 2], [0]]);
  masks.close(1);
  expect(placesOf(masks, 4, 3)).toEqual([2]);
  masks.openAll();
  expect(placesOf(masks, 4, 3)).toEqual([1, 2]);
});

test("what is alike is skipped together, wherever it has come to lie", () => {
  const masks = new FitMasks([item(4, 3), item(5, 2), item(4, 3)], Int32Array.from([0, 1, 0]));
  const skipping = (place: number) => {
    masks.openAll();
    masks.skipAlike(place);
    const left = placesOf(masks, 9, 9);
    masks.skipNone();
    expect(placesOf(masks, 9, 9)).toEqual([0, 1, 2]);
    return left;
  };
  expect([skipping(0), skipping(1)]).toEqual([[1], [0, 2]]);
  masks.swap(0, 1);
  expect([skipping(0), skipping(1)]).toEqual([[1, 2], [0]]);
  // Two of a kind change nothing.
  masks.swap(1, 2);
  expect([skipping(0), skipping(2)]).toEqual([[1, 2], [0]]);
});

test("one that may be turned fits the other way round once it is", () => {
  const masks = new FitMasks([item(4, 3), item(6, 2, true)]);
  masks.openAll();
  expect([masks.turning, placesOf(masks, 2, 6), placesOf(masks, 6, 2)]).toEqual([[1], [], [1]]);
  masks.turn(1);
  expect([placesOf(masks, 2, 6), placesOf(masks, 6, 2), masks.w[1], masks.h[1]]).toEqual([[1], [], 2, 6]);
});
