import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { resolvedWith } from "../../../test/job-with.ts";
import { plannedLock, rigInput } from "../../../test/rig-inputs.ts";
import type { BoardPoint, CordLockLift } from "../../shade-plan/index.ts";
import { countCrossings, verifyRig } from "./verify-rig.ts";

const path = (...points: [number, number][]): BoardPoint[] => points.map(([xMm, zMm]) => ({ xMm, zMm }));

describe("crossings, counted by eye on squared paper", () => {
  test.each([
    ["an X", path([0, 0], [10, 10]), path([0, 10], [10, 0]), 1],
    ["side by side", path([0, 0], [10, 0]), path([0, 1], [10, 1]), 0],
    ["one touches the other", path([0, 0], [10, 0]), path([5, 0], [5, 8]), 1],
    ["one ends where the other begins", path([0, 0], [5, 5]), path([5, 5], [9, 5]), 1],
    ["one lies on the other", path([0, 0], [10, 0]), path([3, 0], [7, 0]), 1],
    ["in one line, apart", path([0, 0], [4, 0]), path([5, 0], [7, 0]), 0],
    ["past a corner", path([0, 0], [5, 0], [5, 5]), path([4, 1], [4, 5]), 0],
    ["through the second leg", path([0, 0], [5, 0], [5, 5]), path([4, 3], [8, 3]), 1],
  ])("%s", (_, one, other, expected) => {
    expect(countCrossings([one, other])).toBe(expected);
    expect(countCrossings([other, one])).toBe(expected);
  });

  test("straight cords cross as often as their ends are out of order (inversions of a permutation)", () => {
    const shuffled = fc
      .integer({ min: 2, max: 9 })
      .chain((n) => fc.shuffledSubarray([...Array(n).keys()], { minLength: n }));
    fc.assert(
      fc.property(shuffled, (order) => {
        let inversions = 0;
        order.forEach((a, i) => {
          inversions += order.slice(i + 1).filter((b) => b < a).length;
        });
        expect(countCrossings(order.map((end, start) => path([0, start], [7, end])))).toBe(inversions);
      }),
    );
  });
});

describe("a rig spoilt by hand is found out", () => {
  const input = rigInput(resolvedWith({}));
  const { values: lift } = plannedLock(input);
  const facts = {
    columnsMm: input.grid.columns.map(({ xMm }) => xMm),
    eyeDiameterMm: 12,
    perSlot: 2,
    head: input.size,
  };
  const spoilt = (spoil: (copy: CordLockLift) => void) => {
    const copy = structuredClone(lift);
    spoil(copy);
    return verifyRig(copy, facts).join("; ");
  };

  test("untouched it passes", () => expect(verifyRig(lift, facts)).toEqual([]));

  test.each<[string, (copy: CordLockLift) => void, RegExp]>([
    ["two cords swap slots", swapEnds, /cross/],
    ["a cord starts beside its column", (l) => first(l).path.splice(0, 1), /does not start/],
    ["a cord ends before the lock", (l) => first(l).path.pop(), /misses the lock/],
    ["a cord is in no slot", (l) => l.slots[0]?.cords.pop(), /one slot|does not know/],
    ["a slot is overfull", (l) => l.slots[0]?.cords.push(9, 10), /holds/],
    [
      "a cord is said to come from the other end",
      (l) => Object.assign(first(l), { entersFrom: "right" }),
      /wrong end/,
    ],
    ["the lock faces inwards", (l) => Object.assign(l.seat, { facing: "left" }), /outside/],
    ["the lock lies on an eye", (l) => Object.assign(l.seat, { xMm: l.eyes[1]?.xMm }), /lies on an eye/],
    ["a cord is missing", (l) => l.cords.pop(), /not every column/],
    ["a cord is not drawn at all", (l) => first(l).path.splice(0), /^cord 1 has no path$/],
    [
      "a cord ends beside its slot",
      (l) => Object.assign(first(l).path.at(-1) ?? {}, { zMm: l.seat.zMm + l.entry.rollerLengthMm }),
      /cord 1 does not run into slot \d/,
    ],
    [
      "a slot between two that are used stays empty",
      (l) =>
        l.cords
          .slice(0, 2)
          .forEach((cord, i) => void Object.assign(cord, { entersFrom: "left", slot: 1 + 4 * i })),
      /cords from the left leave a slot empty between them/,
    ],
    ["a cord turns back", (l) => first(l).path.splice(1, 0, { xMm: -50, zMm: 2 }), /turns back/],
  ])("%s", (_, spoil, fault) => expect(spoilt(spoil)).toMatch(fault));

  function first(copy: CordLockLift) {
    const cord = copy.cords[0];
    if (!cord) throw new Error("invalid lift: no cords");
    return cord;
  }

  function swapEnds(copy: CordLockLift) {
    const [one, other] = copy.cords;
    const a = one?.path.splice(-2) ?? [];
    const b = other?.path.splice(-2) ?? [];
    one?.path.push(...b);
    other?.path.push(...a);
  }
});
