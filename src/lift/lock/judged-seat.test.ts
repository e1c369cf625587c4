import { describe, expect, it } from "vitest";
import { handShade, NO_PARTS } from "../../../test/hand-shade.ts";
import { saidOf } from "../../../test/said.ts";
import { type CordLock, plannedLock } from "../../job/index.ts";
import type { CordEntry } from "../../shade-plan/index.ts";
import { type BoardLine, gapAfter } from "../gaps.ts";
import type { LockInput } from "../lift-input.ts";
import type { FoundSeat } from "./find-seat.ts";
import { judgeEntry } from "./judge-entry.ts";
import { judgeSeat } from "./judge-seat.ts";

const { resolved, size } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const lock = (id: string, over: Partial<CordLock> = {}): CordLock =>
  plannedLock({
    ...{ id, name: `Lock ${id}`, housingLengthMm: 30, housingWidthMm: 22, housingHeightMm: 24 },
    ...{ dividerWires: 2, cordsMax: 6, cordMinMm: 1.4, cordMaxMm: 1.4, ...over },
  } as never);

interface Asked {
  seat: Partial<FoundSeat> & { outer?: number };
  eyesMm?: number[];
  lift?: object;
  own?: object;
}
/** 1,000 mm wide on a board from 3 to 997 mm, eyes of 12 mm, a lock of 30 mm with 12 mm of straight cord, worked on the right. */
function judge({ seat: { outer = 1, ...seat }, eyesMm = [200, 500, 800], lift = {}, own = {} }: Asked) {
  const line: BoardLine = {
    ...{ eyesMm, boardFromMm: 3, boardToMm: 997, eyeRadiusMm: 6, straightRunMm: 12, housingLengthMm: 30 },
  };
  const { seatMm: _seat, ...making } = resolved.making.lift;
  const input = {
    shade: {
      ...resolved,
      making: { ...resolved.making, lift: { ...making, ...lift } },
      own,
      locks: [],
      parts: NO_PARTS,
    },
    size: { ...size, finishedWidthMm: 1000, boardLengthMm: 994 },
    grid: { columns: eyesMm.map((xMm, i) => ({ number: i + 1, xMm })) },
    liftParts: { lock: lock("a") },
  } as unknown as LockInput;
  const frame = { side: "right", head: { finishedWidthMm: 1000 } } as const;
  const found = { forced: false, chosenFor: "reach", lockMm: 233, gap: gapAfter(line, outer), ...seat };
  return saidOf(judgeSeat(input, frame, line, found as FoundSeat));
}

describe("a lock far in from the edge", () => {
  const NEARER = ["Set the edge columns in by 117 mm", "columns/edgeInsetMm", 117];
  const OUTSIDE = ["Seat the lock outside the last eye", "lift/seat", "outside"];

  it("lets its tail hang behind the cloth from 150 mm on", () => {
    expect(judge({ seat: { lockMm: 150 } })).toEqual([]);
    expect(judge({ seat: { lockMm: 233 } })).toEqual([
      {
        ...{
          id: "rig.tail-behind-cloth",
          stage: "rig",
          severity: "note",
          setting: "lift/seat",
          figures: undefined,
        },
        text: "The lock sits 233 mm in from the right edge, so its tail hangs behind the lowered cloth: a hand must reach round for it, and it brushes the back at every pull. Within 150 mm of the edge it hangs in the open.",
        // The edge columns 83 mm nearer to the edge, as far as the lock is too far in.
        remedies: [OUTSIDE, NEARER],
      },
    ]);
  });

  it("says why it is there", () => {
    const text = (chosenFor: FoundSeat["chosenFor"]) => judge({ seat: { chosenFor } })[0]?.text;
    expect(text("pull")).toContain("at every pull. There the cords pull easiest. Within");
    expect(text("hold")).toContain("at every pull. There they come in level. Within");
    expect(text("maker")).toContain("at every pull. Within");
  });

  it("is offered a place outside only where there is one within reach, and nearer columns only on the board", () => {
    const offered = (asked: Asked) => judge(asked)[0]?.remedies;
    // Outside the eye at 53 mm: from 21 to 20 mm; at 54 mm it has its room.
    expect(offered({ seat: { lockMm: 160 }, eyesMm: [53, 500] })).toEqual([
      ["Set the edge columns in by 43 mm", "columns/edgeInsetMm", 43],
    ]);
    expect(offered({ seat: { lockMm: 160 }, eyesMm: [54, 500] })?.[0]).toEqual(OUTSIDE);
    // From 3 + 6 mm on an eye stands on the board.
    expect(offered({ seat: { lockMm: 191 }, eyesMm: [50, 500] })).toEqual([
      ["Set the edge columns in by 9 mm", "columns/edgeInsetMm", 9],
    ]);
    expect(offered({ seat: { lockMm: 192 }, eyesMm: [50, 500] })).toEqual([]);
    // It sits outside already: neither would bring it nearer.
    expect(offered({ seat: { lockMm: 160, outer: 0 } })).toEqual([]);
  });

  it("where the maker set it is left to the planner again, where the setting is the shade's own", () => {
    const free = judge({ seat: { chosenFor: "maker" }, own: { lift: { seatMm: 767 } } });
    expect(free).toMatchObject([
      { setting: "lift/seatMm", remedies: [["Let the planner seat the lock", "lift/seatMm", undefined]] },
    ]);
    expect(judge({ seat: { chosenFor: "maker" } })[0]?.remedies).toEqual([]);
    expect(judge({ seat: { chosenFor: "reach" }, own: { lift: { seatMm: 767 } } })[0]?.remedies).toHaveLength(
      2,
    );
  });
});

describe("a place that is not clear", () => {
  const fixed = (seatMm: number, over: Partial<Asked> = {}) =>
    judge({
      ...over,
      seat: { forced: true, ...over.seat },
      lift: { seatMm, seat: "auto" },
      own: { lift: { seatMm } },
    });

  it("is told from the left edge, with the nearest that is clear", () => {
    // 760 mm from the left are 240 mm from the right; from 200 + 33 to 500 − 33 mm it is clear: 240 mm is.
    expect(fixed(795)).toEqual([
      {
        ...{
          id: "rig.seat-not-clear",
          stage: "rig",
          severity: "stop",
          setting: "lift/seatMm",
          figures: undefined,
        },
        text: "With its centre 795 mm from the left edge, “Lock a” is not clear of the eyes and the ends of the board, with 12 mm of straight cord on each side.",
        remedies: [
          ["Move it to 767 mm from the left edge", "lift/seatMm", 767],
          ["Let the planner seat the lock", "lift/seatMm", undefined],
        ],
      },
    ]);
    // Nearer to the outer gap, which ends 33 mm before the eye.
    expect(fixed(805)[0]?.remedies[0]).toEqual(["Move it to 833 mm from the left edge", "lift/seatMm", 833]);
    expect(fixed(300)[0]?.remedies[0]).toEqual(["Move it to 533 mm from the left edge", "lift/seatMm", 533]);
  });

  it("in a bay that has none says so; without any on the board nothing is offered but the planner's own", () => {
    const crowded = { eyesMm: [50, 100, 150] };
    const [found] = fixed(925, crowded);
    expect(found?.text).toMatch(/on each side\. No place in that bay is\.$/);
    expect(found?.remedies).toEqual([["Let the planner seat the lock", "lift/seatMm", undefined]]);
  });
});

it("a lock that is wished between two eyes without room is offered the end of the board, where that has it", () => {
  const wished = (seat: string, eyesMm: number[]) =>
    judge({ seat: { forced: true }, lift: { seat }, eyesMm })[0]?.remedies.filter(
      ([, setting]) => setting === "lift/seat",
    );
  expect(wished("between", [60, 110, 800])).toEqual([
    ["Seat the lock outside the last eye", "lift/seat", "auto"],
  ]);
  expect(wished("outside", [40, 400, 800])).toEqual([
    ["Seat the lock between the last two eyes", "lift/seat", "auto"],
  ]);
  expect(wished("between", [40, 90, 800])).toEqual([]);
  expect(wished("auto", [40, 90, 800])).toEqual([]);
});

describe("eyes and locks that hold the cord nearer to level", () => {
  /** A cord of 1.4 mm through an eye of 30 mm lies 23.3 mm below the board: 0.8 · 30 − 0.7. */
  const ENTRY: CordEntry = {
    ...{
      rollerMm: 9,
      rollerLengthMm: 20,
      axisMm: 12,
      eyeLevelMm: 23.3,
      mouthLevelMm: 10,
      lockLevelMm: 6.8,
      climbDeg: 20,
    },
  };
  const offered = (eyes: number[], locks: CordLock[], entry = ENTRY) =>
    saidOf(
      judgeEntry(
        {
          shade: {
            ...{ ...resolved, cord: { id: "cord", name: "Cord", diameterMm: 1.4 }, locks },
            parts: {
              ...NO_PARTS,
              eyes: eyes.map((outsideDiameterMm) => ({
                id: `e${outsideDiameterMm}`,
                name: `E ${outsideDiameterMm}`,
                outsideDiameterMm,
              })),
            },
          },
          ...{ grid: { columns: [1, 2, 3, 4] }, liftParts: { lock: lock("a") } },
        } as unknown as LockInput,
        entry,
      ),
    )[0]?.remedies.map(([, setting, id]) => [setting, id]);

  it("are offered two of each, eyes the nearest first, never one that is as far off", () => {
    // The roller at 6.8 mm: an eye of 9.375 mm would be just there.
    expect(offered([40, 8, 12, 10, 20], [])).toEqual([
      ["lift/eye", "e10"],
      ["lift/eye", "e8"],
    ]);
    expect(offered([30, 29], [])).toEqual([["lift/eye", "e29"]]);
    // Over a roller of 9 mm half way down a housing of H mm it lies H / 2 − 5.2 mm below the board.
    const high = (id: string, housingHeightMm: number, over: Partial<CordLock> = {}) =>
      lock(id, { housingHeightMm, ...over });
    expect(
      offered(
        [],
        [
          high("a", 50),
          high("b", 24),
          high("c", 40),
          high("d", 60, { cordsMax: 2 }),
          high("e", 50),
          high("f", 57),
        ],
      ),
    ).toEqual([
      ["lift/lock", "c"],
      ["lift/lock", "e"],
    ]);
    expect(offered([], [high("b", 24)], { ...ENTRY, lockLevelMm: 6.7 })).toEqual([["lift/lock", "b"]]);
    // As far below as it is now above: no nearer.
    expect(offered([], [high("b", 2 * (23.3 + 16.6 + 5.2))])).toEqual([]);
    expect(offered([], [high("b", 2 * (23.3 + 16.4 + 5.2))])).toEqual([["lift/lock", "b"]]);
  });
});
