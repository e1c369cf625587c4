import { describe, expect, it } from "vitest";
import { handShade, NO_PARTS } from "../../../test/hand-shade.ts";
import { wholeSaid } from "../../../test/said.ts";
import { CATALOGUE, type CordLock, plannedLock } from "../../job/index.ts";
import type { CordEntry } from "../../shade-plan/index.ts";
import type { LockInput } from "../lift-input.ts";
import { chooseLock } from "./choose-lock.ts";
import { fitCell } from "./fit-matrix.ts";
import { judgeEntry } from "./judge-entry.ts";
import { judgeFit } from "./judge-fit.ts";
import { judgeHold } from "./judge-hold.ts";
import { judgeTail } from "./judge-tail.ts";
import { misfits } from "./lock-fit.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");
const { resolved } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const CORD = { id: "cord", name: "Cord", diameterMm: 1.4 };
/** Of the maker's own, 24 mm high, six cords of 1.4 mm in three slots. */
const lock = (id: string, over: Partial<CordLock> = {}) =>
  plannedLock({
    ...{ id, name: `Lock ${id}`, housingLengthMm: 30, housingWidthMm: 22, housingHeightMm: 24 },
    ...{ dividerWires: 2, cordsMax: 6, cordMinMm: 1.4, cordMaxMm: 1.4 },
    ...over,
  });

function inputWith(locks: CordLock[], columns: number, over: object = {}): LockInput {
  const shade = { ...resolved, locks, cord: CORD, ...over };
  const grid = { columns: Array.from({ length: columns }, (_, i) => ({ number: i + 1, xMm: 100 * i })) };
  const [first] = locks;
  return { shade, grid, liftParts: { lock: first, forced: false } } as unknown as LockInput;
}

describe("a cord that comes into its lock", () => {
  /** 1.4 mm thick, through an eye at 6 mm below the board and over a roller at 9 mm. */
  const entry = (over: Partial<CordEntry>): CordEntry => ({
    ...{ rollerMm: 8, rollerLengthMm: 20, axisMm: 12 },
    ...{ eyeLevelMm: 6, mouthLevelMm: 8, lockLevelMm: 9, climbDeg: 0 },
    ...over,
  });
  const said = (over: Partial<CordEntry>) => {
    const [found] = judgeEntry(inputWith([lock("a")], 4, { parts: NO_PARTS }), entry(over)).map(wholeSaid);
    return found && { ...found, text: plain(found.text) };
  };

  it("is level up to 10°, either way", () => {
    expect([said({ climbDeg: 10 }), said({ climbDeg: -10 })]).toEqual([undefined, undefined]);
    const drags = "It drags over the edge of the housing, and the lock may not let go.";
    for (const [climbDeg, way] of [
      [12, "climbs at 12°"],
      [-12, "descends at 12°"],
    ] as const)
      expect(said({ climbDeg })).toMatchObject({
        ...{ id: "rig.entry-not-level", severity: "note", path: "/rooms/0/windows/0/shade/making/lift/eye" },
        figures: ["rig.entry-climb", "rig.eye-level", "rig.lock-level"],
        text: `From the last eye the cord ${way} to “Lock a”: in the eye it lies 6 mm below the board, over the roller 9 mm. ${drags} Take an eye and a lock that hold it at one height.`,
      });
  });

  it("rubs on the lower edge of the housing, or would pass through the board, by half of its thickness", () => {
    // The housing is 24 mm high: 23.3 mm and 0.7 mm are the last that go.
    expect(said({ mouthLevelMm: 23.3 })).toBeUndefined();
    expect(said({ mouthLevelMm: 0.7 })).toBeUndefined();
    expect(said({ mouthLevelMm: 23.4 })).toMatchObject({
      severity: "fix",
      text: expect.stringContaining(
        "over the roller 9 mm. It meets the housing 23.4 mm below the board, where the housing is only 24 mm high: it rubs on its lower edge and frays. Take",
      ),
    });
    expect(said({ mouthLevelMm: 0.6 })).toMatchObject({
      severity: "fix",
      text: expect.stringContaining("over the roller 9 mm. It would have to pass through the board. Take"),
    });
  });

  it("is offered eyes and locks that hold it nearer to level, the nearest first", () => {
    const eyes = [8, 30, 18, 20].map((outsideDiameterMm) => ({
      ...{ id: `eye-${outsideDiameterMm}`, name: `Eye ${outsideDiameterMm}`, outsideDiameterMm },
    }));
    const shelf = [
      lock("a"),
      lock("few", { cordsMax: 2, housingHeightMm: 14 }),
      lock("low", { housingHeightMm: 14 }),
    ];
    const input = inputWith(shelf, 4, { parts: { ...CATALOGUE, eyes } });
    const labels = (over: Partial<CordEntry>) =>
      judgeEntry(input, entry({ climbDeg: 20, ...over }))[0]?.remedies.map(({ label }) => label) ?? [];
    const offered = labels({ eyeLevelMm: 6, lockLevelMm: 14 });
    expect(offered).not.toContain("Use “Lock a”");
    expect(offered).not.toContain("Use “Lock few”");
    expect(offered.filter((label) => label.includes("Eye"))).toHaveLength(2);
    expect(offered).toContain("Use “Lock low”");
  });
});

describe("a lock that does not take the cords", () => {
  it("of the maker’s own, each is named with its reasons, four at the most", () => {
    const text = (count: number) => {
      const shelf = Array.from({ length: count }, (_, i) => lock(String(i + 1)));
      const found = judgeFit(inputWith(shelf, 8)).find(({ id }) => id === "lift.no-own-lock");
      return plain(found?.text);
    };
    const reason = "takes at most 6 cords; this shade has 8";
    expect(text(1)).toBe(
      `None of your own locks takes 8 cords of 1.4 mm: “Lock 1” ${reason}. The first that comes near is drawn; do not rig it so. What would do: a lock for cord of 1.4 mm that takes 8 cords, with 4 slots or more at two in a slot.`,
    );
    expect(text(4)).toContain(`“Lock 4” ${reason}. The first`);
    expect(text(6)).toContain(`“Lock 4” ${reason}. 2 more are refused as well. The first`);
    expect(text(6)).not.toContain("Lock 5");
  });

  it("is told alone where another of them does, or where it is an example of the catalogue", () => {
    const ids = (shelf: CordLock[]) => judgeFit(inputWith(shelf, 8)).map(({ id }) => id);
    expect(ids([lock("a"), lock("roomy", { cordsMax: 8, dividerWires: 3 })])).toEqual([
      "lift.too-many-cords",
    ]);
    expect(ids([lock("a", { demo: true }), lock("b")])).toContain("lift.too-many-cords");
    expect(ids([lock("a", { demo: true }), lock("b")])).not.toContain("lift.no-own-lock");
    // An example beside the maker's own does not count among them.
    const own = [lock("a"), lock("sample", { demo: true, cordsMax: 8, dividerWires: 3 })];
    expect(ids(own)).toContain("lift.no-own-lock");
  });

  it("of two that miss by as much the first is drawn", () => {
    const shelf = [lock("first"), lock("second")];
    expect(chooseLock({ ...resolved, locks: shelf, cord: CORD } as never, 8)).toMatchObject({
      ...{ lock: { id: "first" }, forced: true },
      refused: [{ lock: { id: "second" }, reason: "takes at most 6 cords; this shade has 8" }],
    });
    const nearer = [lock("first"), lock("nearer", { cordsMax: 7, dividerWires: 3 })];
    expect(chooseLock({ ...resolved, locks: nearer, cord: CORD } as never, 8).lock.id).toBe("nearer");
  });

  it("a table of locks by cords gives the same reasons, of a shade and without one", () => {
    expect(fitCell(lock("a"), CORD, 8).reasons).toEqual(["takes at most 6 cords; this shade has 8"]);
    expect(fitCell(lock("a"), CORD, 8, "you have").reasons).toEqual(["takes at most 6 cords; you have 8"]);
    expect(fitCell(lock("a"), CORD, 6).reasons).toEqual([]);
  });

  it("an example says so, and that it stands in where the maker chose none", () => {
    const demo = (forced: boolean) => {
      const input = inputWith([lock("a", { demo: true })], 4);
      const found = judgeFit({ ...input, liftParts: { ...input.liftParts, forced } });
      return found.find(({ id }) => id === "lift.demo-lock")?.text;
    };
    const measure = "Measure your own before the board is drilled: its length decides where it sits.";
    expect(demo(true)).toBe(`The sizes of “Lock a” are invented for demonstration. ${measure}`);
    expect(demo(false)).toBe(
      `The sizes of “Lock a” are invented for demonstration; it stands in until you enter the lock in your hand. ${measure}`,
    );
  });

  it("thin cord goes inside, and the gap at the end is told where it was measured", () => {
    const inner = (over: Partial<CordLock>) => {
      const thin = lock("a", {
        dividerWires: 4,
        cordsMax: 10,
        cordMinMm: 0.9,
        thinCordMm: 0.9,
        thinCordsMax: 9,
        ...over,
      });
      const input = inputWith([thin], 4, { cord: { ...CORD, diameterMm: 0.9 } });
      return plain(judgeFit(input).find(({ id }) => id === "lift.inner-slots-only")?.text);
    };
    const said =
      "Cord of 0.9 mm goes in the inner slots of “Lock a” only: in an outer slot it can wedge between roller and housing";
    expect(inner({})).toBe(`${said}.`);
    expect(inner({ endGapMm: 0.8 })).toBe(`${said}, whose gap is 0.8 mm there.`);
  });
});

describe("why a lock does not go with a cord", () => {
  const why = (over: Partial<CordLock>, diameterMm = 1.4, count = 4) => {
    const range = { cordMinMm: undefined, cordMaxMm: undefined };
    return misfits({ ...lock("a"), ...range, ...over } as CordLock, { ...CORD, diameterMm }, count).map(
      ({ id, severity, harm, reason }) => [id, severity, harm, plain(reason)],
    );
  };

  it.each([
    [
      { cordMinMm: 1.4, cordMaxMm: 1.8 },
      0.9,
      "jams",
      "cord of 1.4 mm to 1.8 mm; this cord is 0.9 mm, and a thinner cord slips beside the roller and jams",
    ],
    [
      { cordMinMm: 1.4, cordMaxMm: 1.8 },
      2,
      "too-thick",
      "cord of 1.4 mm to 1.8 mm; this cord is 2 mm, and a thicker cord does not run free",
    ],
    [
      { cordMaxMm: 1.8, endGapMm: 0.2 },
      2,
      "too-thick",
      "cord of at most 1.8 mm; this cord is 2 mm, and a thicker cord does not run free",
    ],
    [
      { cordMinMm: 1.4, endGapMm: 0.2 },
      0.9,
      "jams",
      "cord of at least 1.4 mm; this cord is 0.9 mm, and a thinner cord slips beside the roller and jams",
    ],
  ])("its range: %o, cord of %d mm", (over, diameterMm, harm, reason) => {
    expect(why(over, diameterMm)).toEqual([["lift.cord-diameter", "stop", harm, `is made for ${reason}`]]);
  });

  it.each([
    [1.6, "fix", "not-known", "is stated for cord of 1.4 mm; this cord of 1.6 mm is 14 % off"],
    [1.8, "stop", "too-thick", "is stated for cord of 1.4 mm; this cord of 1.8 mm is 29 % off"],
    [1, "stop", "jams", "is stated for cord of 1.4 mm; this cord of 1 mm is 29 % off"],
  ])("its one diameter, cord of %d mm", (diameterMm, severity, harm, reason) => {
    expect(why({ cordNominalMm: 1.4 }, diameterMm)).toEqual([["lift.cord-diameter", severity, harm, reason]]);
  });

  it("counts one cord as one", () => {
    expect(why({ cordsMax: 1, cordNominalMm: 1.4 }, 1.4, 2)[0]?.[3]).toBe(
      "takes at most 1 cord; this shade has 2",
    );
  });

  it("a gap hardly less than the cord", () => {
    expect(why({ cordNominalMm: 1.4, endGapMm: 1.3 })).toEqual([
      [
        ...["lift.end-gap", "note", undefined],
        "has a gap of 1.3 mm at the roller’s end, hardly less than the cord’s 1.4 mm; a worn or flattened cord may slip into it",
      ],
    ]);
    expect(why({ cordNominalMm: 1.4, endGapMm: 1.1 })).toEqual([]);
  });

  it("a capacity that nobody states is tried at the bench, and never taken beyond what the slots hold", () => {
    const unstated = { cordsMax: undefined, cordNominalMm: 1.4 };
    expect(why(unstated, 1.4, 1)).toEqual([
      [
        ...["lift.capacity-unknown", "unproven", "not-known"],
        "has no stated capacity. Test how much one cord holds in it before 1 cord is trusted to it",
      ],
    ]);
    expect(why(unstated, 1.4, 2)[0]?.[3]).toMatch(/ before 2 cords are trusted to it$/);
    const [many] = why(unstated, 1.4, 9);
    expect(many?.slice(0, 3)).toEqual(["lift.capacity-unknown", "fix", "not-known"]);
    expect(many?.[3]).toMatch(/^has no stated capacity, and 9 cords would lie more than \d in a slot$/);
    const tests = { hold: { readingsN: [60], cordDiameterMm: 1.4 } };
    expect(why({ ...unstated, tests }, 1.4, 4)).toEqual([]);
  });

  it("thin cord with its inner slots full, or without any", () => {
    const thin = { dividerWires: 2, cordsMax: 6, thinCordMm: 1.4, cordNominalMm: 1.4 };
    expect(why(thin, 1.4, 3)).toEqual([
      [
        ...["lift.too-many-cords", "stop", "too-many"],
        "takes at most 2 cords of 1.4 mm, in its inner slots; this shade has 3",
      ],
    ]);
    expect(why({ ...thin, dividerWires: 1 }, 1.4, 1)[0]).toEqual([
      ...["lift.too-many-cords", "stop", "jams"],
      "has no inner slots, and cord of 1.4 mm may not go in the outer ones: it can slip in beside the roller and jam",
    ]);
  });
});

describe("what a lock holds, asked for twice", () => {
  const held = (over: Partial<CordLock>, loadsN = [4, 6]) => {
    const found = judgeHold(inputWith([lock("a", over)], 2), loadsN);
    return {
      said: found.findings
        .map(wholeSaid)
        .map(({ id, severity, text, figures }) => [id, severity, plain(text), ...(figures ?? [])]),
      needsN: found.workings.map(({ value }) => value),
    };
  };
  const test = (leastN: number, cordDiameterMm = 1.4) => ({
    tests: { hold: { readingsN: [leastN + 3, leastN, leastN + 1], cordDiameterMm } },
  });

  it("is asked of a lock that states no capacity, and of every one that was tested", () => {
    expect(held({})).toEqual({ said: [], needsN: [] });
    expect(held({ cordsMax: undefined })).toEqual({
      needsN: [12],
      said: [
        [
          ...["lift.hold-untested", "unproven"],
          "Nobody states how much “Lock a” holds. Thread one cord, lock it and pull on a luggage scale ten times: the least reading must be 12 N or more, twice what hangs on the heaviest cord of this shade.",
          "lift.hold-needed",
        ],
      ],
    });
  });

  it("is the least of its readings: below the load it must not be hung, below twice the load it works badly", () => {
    expect(held(test(12))).toEqual({ said: [], needsN: [12] });
    const short = (leastN: number) => held(test(leastN)).said;
    const words = (leastN: number) =>
      `In your test one cord slipped in “Lock a” at ${leastN} N; the heaviest cord of this shade carries 6 N, and twice that, 12 N, is asked for. Take another lock, a thicker cord that it takes, more columns, or a lighter bar.`;
    expect(short(11.9)).toEqual([["lift.hold-short", "fix", words(11.9), "lift.hold-needed"]]);
    expect(short(6)[0]?.[1]).toBe("fix");
    expect(short(5.9)).toEqual([["lift.hold-short", "stop", words(5.9), "lift.hold-needed"]]);
  });

  it("with another cord shows nothing for this one", () => {
    expect(held(test(40, 1.8)).said).toEqual([
      [
        ...["lift.hold-other-cord", "unproven"],
        "“Lock a” was tested with cord of 1.8 mm; this one is 1.4 mm. Test it again with this cord: it must hold 12 N.",
        "lift.hold-needed",
      ],
    ]);
  });
});

describe("where the tail ends", () => {
  /** The lock 2,000 mm above the floor, the cleat at 1,600 mm; 200 mm of cord go on the cleat. */
  const said = (loweredMm: number, raisedMm: number, lockMm = 2000) =>
    judgeTail(
      {
        ...resolved,
        making: { ...resolved.making, lift: { ...resolved.making.lift, cleatAboveFloorMm: 1600 } },
      },
      { tailLoweredMm: loweredMm, tailRaisedMm: raisedMm } as never,
      { lockAboveFloorMm: lockMm } as never,
    )
      .map(wholeSaid)
      .map(({ id, severity, text, remedies }) => [
        id,
        severity,
        plain(text),
        ...remedies.map(({ label }) => plain(label)),
      ]);

  it("on the floor, the cord that lies there is what is to go", () => {
    expect(said(800, 2000)).toEqual([]);
    expect(said(800, 2040)).toEqual([
      [
        "rig.tail-on-floor",
        "fix",
        "With the shade raised, 40 mm of the tail lies on the floor.",
        "Let 760 mm hang below the lock",
      ],
    ]);
    // Cord cannot be cut shorter than none.
    expect(said(30, 2040)[0]?.slice(3)).toEqual([]);
  });

  it("out of a hand’s reach, 1.9 m above the floor, it is let down to the cleat", () => {
    expect(said(100, 1500)).toEqual([]);
    expect(said(99, 1500)).toEqual([
      [
        ...["rig.tail-out-of-reach", "fix"],
        "With the shade lowered the tail ends 1901 mm above the floor, above the reach of many hands.",
        "Let 400 mm hang below the lock",
      ],
    ]);
  });

  it("short of its cleat where less than 200 mm are left below it", () => {
    expect(said(300, 600)).toEqual([]);
    expect(said(300, 599)).toEqual([
      [
        ...["rig.tail-short-of-cleat", "note"],
        "With the shade raised the tail ends 1401 mm above the floor: too short to wind on a cleat at 1600 mm.",
        "Let 301 mm hang below the lock",
      ],
    ]);
    expect(said(300, 310, 1600)).toEqual([]);
  });
});
