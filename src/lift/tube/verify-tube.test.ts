import { expect, it } from "vitest";
import type { TubeLift } from "../../shade-plan/index.ts";
import { verifyTube } from "./verify-tube.ts";

/** Two spools of 20 mm over columns at 100 and 500 mm, a support of 10 mm at 300, a drive of 60 mm at 600; board to 700. */
function tube(spoil: (lift: TubeLift) => void = () => {}): string[] {
  const lift = {
    spools: [
      { number: 1, xMm: 100, lengthMm: 20 },
      { number: 2, xMm: 500, lengthMm: 20 },
    ],
    supports: [{ number: 1, xMm: 300 }],
    supportLengthMm: 10,
    drive: { xMm: 600, lengthMm: 60 },
    tube: { fromMm: 80, toMm: 640 },
    cords: [
      { number: 1, columnX: 100 },
      { number: 2, columnX: 500 },
    ],
  } as unknown as TubeLift;
  spoil(lift);
  return verifyTube(lift, { columnsMm: [100, 500], boardFromMm: 0, boardToMm: 700 });
}

it("passes a tube as it should be, parts that just touch and just reach the end of the board", () => {
  expect(tube()).toEqual([]);
  expect(tube(({ drive }) => void Object.assign(drive, { xMm: 540 }))).toEqual([]);
  expect(tube(({ drive }) => void Object.assign(drive, { xMm: 670 }))).toEqual([]);
});

it.each<[string, (lift: TubeLift) => void, string[]]>([
  [
    "a drive on a spool",
    ({ drive }) => Object.assign(drive, { xMm: 539 }),
    ["spool 2 and the drive overlap"],
  ],
  [
    "a support on a spool",
    ({ supports }) => Object.assign(supports[0] ?? {}, { xMm: 112 }),
    ["spool 1 and support 1 overlap"],
  ],
  [
    "a drive past the end",
    ({ drive }) => Object.assign(drive, { xMm: 671 }),
    ["the drive reaches beyond the board"],
  ],
  [
    "a spool past the other end, and off its tube and cord",
    ({ spools }) => Object.assign(spools[0] ?? {}, { xMm: 9 }),
    [
      "spool 1 reaches beyond the board",
      "spool 1 is not on the tube",
      "cord 1 does not hang under its own spool",
    ],
  ],
  [
    "a tube cut too short",
    ({ tube: rod }) => Object.assign(rod, { toMm: 499 }),
    ["spool 2 is not on the tube"],
  ],
  [
    "a tube that begins too late",
    ({ tube: rod }) => Object.assign(rod, { fromMm: 101 }),
    ["spool 1 is not on the tube"],
  ],
  [
    "a cord beside its spool",
    ({ cords }) => Object.assign(cords[1] ?? {}, { columnX: 501 }),
    ["cord 2 does not hang under its own spool"],
  ],
  ["a cord too few", ({ cords }) => cords.pop(), ["not every column has one cord and one spool"]],
  ["a spool too few", ({ spools }) => spools.pop(), ["not every column has one cord and one spool"]],
])("finds %s", (_, spoil, faults) => {
  expect(tube(spoil)).toEqual(faults);
});
