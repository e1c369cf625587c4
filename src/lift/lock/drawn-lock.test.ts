import { describe, expect, it } from "vitest";
import { resolvedWith } from "../../../test/job-with.ts";
import { expectNear } from "../../../test/near.ts";
import { plannedLock, rigInput } from "../../../test/rig-inputs.ts";
import { workingOf } from "../../figures/index.ts";
import { type CordLock, plannedLock as lockOf } from "../../job/index.ts";
import type { BoardLine } from "../gaps.ts";
import { cordEntry } from "./cord-entry.ts";
import { findSeat } from "./find-seat.ts";
import { lockRoom } from "./lock-fit.ts";
import { lockScrews, numbersFromControl, seatFigures, slotsOf, xFromControl } from "./lock-parts.ts";
import { ON_LEVEL_BOARD, type RigLayout, rigPullN, strandPath, threadRig } from "./rig-threading.ts";
import { firstSlotInUse, rollerLengthMm, slotLayout, slotMiddleMm } from "./slot-layout.ts";

/** 30 mm along the board, 22 mm across it, 24 mm high; three slots of two. */
const lock = (over: Partial<CordLock> = {}): CordLock =>
  lockOf({
    ...{ id: "a", name: "Lock", housingLengthMm: 30, housingWidthMm: 22, housingHeightMm: 24 },
    ...{ dividerWires: 2, cordsMax: 6, cordMinMm: 1.4, cordMaxMm: 1.4, ...over },
  } as never);
const CORD = { id: "cord", name: "Cord", diameterMm: 1.4 };

describe("screws of a lock", () => {
  const screws = (count: number, side: "left" | "right" = "right") =>
    lockScrews(lock({ screws: count }), { side, head: { finishedWidthMm: 1000 } }, 100, 19).map(
      ({ xMm, zMm }) => [
        ...[Math.round(10 * (xMm - (side === "right" ? 900 : 100))) / 10, Math.round(10 * (zMm - 19)) / 10],
      ],
    );

  // Within the housing: 12 of its 15 mm to either side, 6.6 of its 11 mm.
  it("lie in one row up to three, in two from four on, from the left", () => {
    expect(screws(1)).toEqual([[0, 0]]);
    expect(screws(2)).toEqual([
      [-12, 0],
      [12, 0],
    ]);
    expect(screws(3)).toEqual([
      [-12, 0],
      [0, 0],
      [12, 0],
    ]);
    expect(screws(4)).toEqual([
      [-12, -6.6],
      [12, -6.6],
      [-12, 6.6],
      [12, 6.6],
    ]);
    expect(screws(5)).toEqual([
      [-12, -6.6],
      [0, -6.6],
      [12, -6.6],
      [-12, 6.6],
      [0, 6.6],
    ]);
    expect(screws(4, "left")).toEqual(screws(4));
  });
});

describe("slots of a lock", () => {
  it("share its rollers: housing less two walls of 1.5 mm and two gaps, and 60 % of it at the least", () => {
    expectNear(rollerLengthMm(lock()), 22 - 2 * (1.5 + 0.5), 1e-12);
    expectNear(rollerLengthMm(lock({ endGapMm: 1 })), 22 - 2 * 2.5, 1e-12);
    expectNear(rollerLengthMm(lock({ endGapMm: 9 })), 0.6 * 22, 1e-12);
    // Three of 6 mm about the line of the eyes.
    expect([1, 2, 3].map((slot) => Math.round(slotMiddleMm(lock(), slot, 19)))).toEqual([13, 19, 25]);
  });

  const layout = (over: Partial<CordLock>, cords: number, diameterMm = 1.4) => {
    const one = lock(over);
    return slotLayout(one, lockRoom(one, { ...CORD, diameterMm }), cords, 19);
  };

  it("take cords as the lock states, more where there are more; thin cord the inner ones alone", () => {
    const { values, workings } = layout({}, 4);
    expect(values).toMatchObject({ first: 1, pitchMm: 6, perSlot: 2 });
    expect(values.slotsMm).toHaveLength(3);
    expect(workings.map((one) => [workingOf(one).id, workingOf(one).value])).toEqual([
      ["lift.slots", 3],
      ["lift.cords-per-slot", 2],
    ]);
    expect(workingOf(workings[1] as never).inputs.map(({ label }) => label)).toContain("slots");
    expect([layout({}, 6).values.perSlot, layout({}, 7).values.perSlot]).toEqual([2, 3]);
    const thin = layout({ dividerWires: 4, cordsMax: 10, thinCordMm: 1 }, 4, 0.9);
    expect(thin.values).toMatchObject({ first: 2, perSlot: 2 });
    expect(thin.values.slotsMm.map((mm) => Math.round(10 * mm) / 10)).toEqual([15.4, 19, 22.6]);
    expect(workingOf(thin.workings[1] as never).inputs.map(({ label }) => label)).toContain(
      "inner slots, for thin cord",
    );
    // Without an inner one they are drawn in all.
    const none = layout({ dividerWires: 1, thinCordMm: 2 }, 2);
    expect(none.values).toMatchObject({ first: 1, perSlot: 1 });
    expect(none.values.slotsMm).toHaveLength(2);
    expect([
      firstSlotInUse(lockRoom(lock({ dividerWires: 1, thinCordMm: 2 }), CORD)),
      firstSlotInUse(lockRoom(lock({ thinCordMm: 2 }), CORD)),
    ]).toEqual([1, 2]);
  });

  it("know their cords by the columns' numbers, and which of them may be used", () => {
    const slots = (over: Partial<CordLock>, side: "left" | "right") =>
      slotsOf(
        {
          ...{
            grid: { columns: [{ number: 1 }, { number: 2 }, { number: 3 }] },
            liftParts: { lock: lock(over) },
          },
          shade: { cord: CORD, board: { depthMm: 38 }, making: { lift: { controlSide: side } } },
        } as never,
        [
          { slot: 0, eye: 2 },
          { slot: 0, eye: 1 },
          { slot: 1, eye: 0 },
        ] as never,
      ).map(({ number, zMm, usable, cords }) => [number, Math.round(10 * zMm) / 10, usable, cords]);
    expect(slots({}, "right")).toEqual([
      [1, 13, true, [1, 2]],
      [2, 19, true, [3]],
      [3, 25, true, []],
    ]);
    expect(slots({ dividerWires: 3, cordsMax: 8, thinCordMm: 2 }, "left")).toEqual([
      [1, 12.25, false, []].map((one) => (typeof one === "number" ? Math.round(10 * one) / 10 : one)),
      [2, 16.8, true, [3, 2]],
      [3, 21.3, true, [1]],
      [4, 25.8, false, []],
    ]);
  });

  it("columns are counted from the side that the cords hang on", () => {
    const columns = [
      { number: 1, xMm: 5 },
      { number: 2, xMm: 9 },
    ];
    expect([numbersFromControl(columns, "left"), numbersFromControl(columns, "right")]).toEqual([
      [1, 2],
      [2, 1],
    ]);
    expect([xFromControl(columns, "left"), xFromControl(columns, "right")]).toEqual([
      [5, 9],
      [9, 5],
    ]);
  });
});

/** Eyes of 12 mm at 50, 250, 450 and 650 mm, a lock of 30 mm with 12 mm of straight cord. */
const EYES = [50, 250, 450, 650];
const LINE: BoardLine = {
  ...{ eyesMm: EYES, boardFromMm: 3, boardToMm: 697, eyeRadiusMm: 6, straightRunMm: 12, housingLengthMm: 30 },
};
const LAYOUT: RigLayout = {
  ...{ eyesMm: EYES, loadsN: [2, 4, 4, 2], cordDiameterMm: 1.4, eyeDiameterMm: 12, friction: 0.25 },
  ...{
    housingLengthMm: 30,
    eyeLineMm: 19,
    slotsMm: [12, 19, 26],
    slotPitchMm: 7,
    perSlot: 2,
    onBoard: ON_LEVEL_BOARD,
  },
};
const WISH = { kind: "auto" as const, ruler: "1 mm" as const, pullLimitsN: [] };

it("the seat's bounds are worked out beside their formula, from the end of the board or from an eye", () => {
  const bounds = (outer: number) =>
    seatFigures(LINE, { outer } as never).map((one) => [workingOf(one).id, one.value]);
  expect(bounds(0)).toEqual([
    ["rig.seat-from", 3 + 3 + 15],
    ["rig.seat-to", 50 - 6 - 12 - 15],
  ]);
  expect(bounds(1)).toEqual([
    ["rig.seat-from", 83],
    ["rig.seat-to", 217],
  ]);
  expect(bounds(4)).toEqual([["rig.seat-from", 650 + 33]]);
});

describe("lanes through the eyes", () => {
  /** An eye opens 0.6 of its 12 mm: its lanes lie within (7.2 − 1.4) / 2 mm of its middle. */
  const lanes = (outer: number, over: Partial<RigLayout> = {}) =>
    threadRig({ ...LAYOUT, ...over }, outer).map(({ eye, passes, eyeLaneMm }) => [
      eye,
      passes,
      Math.round(1000 * (eyeLaneMm - 19)) / 1000,
    ]);

  it("are shared by the cords of each end: farther cords on the outer lane, to either side of the line", () => {
    // Three inner cords: 2.9 / 2 mm for each eye that is passed. One outer cord starts in the middle.
    expect(lanes(1)).toEqual([
      [3, [2, 1], -2.9],
      [2, [1], -1.45],
      [1, [], 0],
      [0, [], 0],
    ]);
    expect(lanes(2)).toEqual([
      [3, [2], -2.1],
      [2, [], 0],
      [1, [], 0],
      [0, [1], 2.1],
    ]);
  });

  it("are no more than one and a half cords apart, and never one on the other", () => {
    expect(lanes(2, { eyeDiameterMm: 60 })[0]?.[2]).toBe(-2.1);
    expect(lanes(1, { eyeDiameterMm: 60 })[0]?.[2]).toBe(-4.2);
    expect(lanes(1, { eyeDiameterMm: 2 })[0]?.[2]).toBe(-0.04);
    // A single cord and the one between: all of half the opening.
    expect(lanes(2, { cordDiameterMm: 3, eyeDiameterMm: 8 })[0]?.[2]).toBe(-0.9);
  });

  it("end in the slots: side by side by a cord, or by what the slot has", () => {
    const ends = (over: Partial<RigLayout> = {}) =>
      threadRig({ ...LAYOUT, ...over }, 1).map(({ slot, place, slotLaneMm }) => [
        slot,
        place,
        Math.round(1000 * slotLaneMm) / 1000,
      ]);
    // From within three, from without one: two, one and one.
    expect(ends()).toEqual([
      [0, 1, 11.3],
      [0, 2, 12.7],
      [1, 1, 19],
      [2, 1, 26],
    ]);
    expect(ends({ slotPitchMm: 2 }).slice(0, 2)).toEqual([
      [0, 1, 11.5],
      [0, 2, 12.5],
    ]);
  });

  it("turn once at the last eye passed and once at the housing, drawn from eye to roller", () => {
    const [far] = threadRig(LAYOUT, 1);
    if (far === undefined) throw new Error("invalid test: no strand");
    const path = strandPath(LAYOUT, far, 150).map(([along, z]) => [along, Math.round(1000 * z) / 1000]);
    expect(path).toEqual([
      [650, 19],
      [450, 16.1],
      [250, 16.1],
      [165, 11.3],
      [150, 11.3],
    ]);
    const [, , , near] = threadRig(LAYOUT, 1);
    if (near === undefined) throw new Error("invalid test: no strand");
    expect(strandPath(LAYOUT, near, 150)).toEqual([
      [50, 19],
      [135, 26],
      [150, 26],
    ]);
    // A seat on an eye leaves no straight run.
    expect(strandPath(LAYOUT, near, 65)).toEqual([
      [50, 19],
      [65, 26],
    ]);
  });
});

describe("how the cord comes in", () => {
  it("over a roller of its own measure, no larger than fits the housing, its axis half way down", () => {
    const seat = findSeat(LINE, LAYOUT, WISH);
    const entry = (over: Partial<CordLock> = {}, at = seat) =>
      cordEntry(lock(over), { outsideDiameterMm: 12 }, LAYOUT, at).values;
    expect(entry()).toMatchObject({ rollerMm: 9, rollerLengthMm: 18, axisMm: 12 });
    expect(entry({ rollerDiameterMm: 5 }).rollerMm).toBe(5);
    expectNear(entry({ rollerDiameterMm: 50 }).rollerMm, 0.45 * 24, 1e-12);
    expectNear(entry({ housingLengthMm: 10 }).rollerMm, 4.5, 1e-12);
    // 12·(1 + 0.6) / 2 − 0.7 in the eye, 12 − 4.5 − 0.7 over the roller, 33 mm apart.
    expectNear(entry().eyeLevelMm, 8.9, 1e-12);
    expectNear(entry().lockLevelMm, 6.8, 1e-12);
    expectNear(entry().climbDeg, (Math.atan(2.1 / 33) * 180) / Math.PI, 1e-9);
    expectNear(entry().mouthLevelMm, 6.8 + (2.1 * 15) / 33, 1e-12);
    // Forced onto an eye it climbs within the housing: over 15 mm.
    const forced = entry({}, { ...seat, lockMm: 52 });
    expectNear(forced.climbDeg, (Math.atan(2.1 / 15) * 180) / Math.PI, 1e-9);
    expectNear(forced.mouthLevelMm, 8.9, 1e-12);
  });
});

describe("a seat between two marks", () => {
  /** From 83.4 mm on for 0.4 mm: no mark of a millimetre. */
  const tight: BoardLine = { ...LINE, eyesMm: [50.4, 116.8, 450, 650] };
  // The heavy cord of the edge turns the less the farther in the lock sits.
  const layout = { ...LAYOUT, eyesMm: tight.eyesMm, loadsN: [20, 1, 1, 1] };

  it("is at its nearer end, or where it pulls least of eleven places", () => {
    const reach = findSeat(tight, layout, WISH);
    expectNear(reach.lockMm, 83.4, 1e-9);
    const pull = (mm: number) => rigPullN(layout, threadRig(layout, 1), mm);
    const places = Array.from({ length: 11 }, (_, i) => 83.4 + (0.4 * i) / 10);
    const least = Math.min(...places.map(pull));
    const eased = findSeat(tight, layout, { ...WISH, pullLimitsN: [(least + pull(83.4)) / 2] });
    expect(eased.chosenFor).toBe("pull");
    expectNear(pull(eased.lockMm), least, 1e-9);
    expect(eased.lockMm).toBeGreaterThanOrEqual(83.4 - 1e-9);
    expect(eased.lockMm).toBeLessThanOrEqual(83.8 + 1e-9);
  });

  it("with no room at all is where it misses by least, in the middle of that", () => {
    // Between the eyes it lacks 36 mm, outside 4 mm.
    const none: BoardLine = { ...LINE, eyesMm: [50, 80, 450, 650] };
    expect(findSeat(none, { ...LAYOUT, eyesMm: none.eyesMm }, WISH)).toMatchObject({
      ...{ lockMm: 19, forced: true, chosenFor: "reach", gap: { outer: 0 } },
    });
    // Outside it lacks 14 mm, between 6 mm.
    const bay: BoardLine = { ...LINE, eyesMm: [40, 100, 450, 650] };
    expect(findSeat(bay, { ...LAYOUT, eyesMm: bay.eyesMm }, WISH)).toMatchObject({
      ...{ lockMm: 70, forced: true, gap: { outer: 1 } },
    });
    // Both lack 4 mm: the first that is looked at.
    const both: BoardLine = { ...LINE, eyesMm: [50, 112, 450, 650] };
    expect(findSeat(both, { ...LAYOUT, eyesMm: both.eyesMm }, WISH).gap.outer).toBe(1);
  });
});

it("a seat that pulls least lies on a mark of the ruler as well", () => {
  const layout = { ...LAYOUT, loadsN: [20, 1, 1, 1] };
  const threading = threadRig(layout, 1);
  const marks = Array.from({ length: 80 }, (_, i) => 3.175 * i).filter((mm) => mm >= 83 && mm <= 217);
  const pulls = marks.map((mm) => rigPullN(layout, threading, mm));
  const best = marks[pulls.indexOf(Math.min(...pulls))] ?? 0;
  const found = findSeat(LINE, layout, {
    ...WISH,
    ruler: "1/8 in",
    pullLimitsN: [Math.min(...pulls) + 1e-6],
  });
  expect(found.chosenFor).toBe("pull");
  expectNear(found.lockMm, best, 1e-9);
});

it("under a slope the tail hangs from the lock's own height, and what is judged of it goes by that", () => {
  const below = (high: "left" | "right", sillMm: number) => {
    const input = rigInput(
      resolvedWith(
        {
          opening: {
            widthsMm: [1200],
            heightsMm: [2000],
            sillAboveFloorMm: sillMm,
            head: { kind: "angled", fallMm: 500, high },
          },
          shade: {
            style: "flat",
            mount: "to-size",
            making: { lift: { tailMm: 300, cleatAboveFloorMm: 1200 } },
          },
        },
        { units: { system: "metric", ruler: "1 mm" } },
      ),
    );
    const { values, findings } = plannedLock(input);
    const lockMm =
      sillMm +
      2000 -
      (high === "left" ? values.seat.xMm : 1200 - values.seat.xMm) * (500 / 1200) -
      input.shade.board.thicknessMm -
      input.liftParts.lock.housingHeightMm;
    const text = findings.find(({ id }) => id === "rig.tail-out-of-reach")?.text;
    return { endMm: lockMm - 300, told: Number(/ends (\d+)/.exec(text ?? "")?.[1]) };
  };
  for (const [high, sillMm] of [
    ["left", 1000],
    ["right", 500],
  ] as const) {
    const { endMm, told } = below(high, sillMm);
    expect(endMm).toBeGreaterThan(1900);
    expect(Math.abs(told - endMm)).toBeLessThanOrEqual(0.5);
  }
});
