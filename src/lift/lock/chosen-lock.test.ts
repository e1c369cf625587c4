import { describe, expect, it } from "vitest";
import { handShade, NO_PARTS } from "../../../test/hand-shade.ts";
import { plain, saidOf } from "../../../test/said.ts";
import { type CordLock, plannedLock } from "../../job/index.ts";
import type { LockInput } from "../lift-input.ts";
import { chooseLock } from "./choose-lock.ts";
import { fitCell } from "./fit-matrix.ts";
import { judgeFit } from "./judge-fit.ts";
import { judgeRig } from "./judge-rig.ts";
import { misfits } from "./lock-fit.ts";
import { ownFit } from "./own-fit.ts";

const { resolved } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const CORD = { id: "cord", name: "Cord", diameterMm: 1.4 };
const lock = (id: string, over: Partial<CordLock> = {}): CordLock =>
  plannedLock({
    ...{ id, name: `Lock ${id}`, housingLengthMm: 30, housingWidthMm: 22, housingHeightMm: 24 },
    ...{ dividerWires: 2, cordsMax: 6, cordMinMm: 1.4, cordMaxMm: 1.4 },
    ...over,
  } as never);
/** Stated for 1.6 mm alone, 12.5 % off: to be looked at, not refused. */
const OFF = { cordMinMm: undefined, cordMaxMm: undefined, cordNominalMm: 1.6 };

describe("the lock of a shade", () => {
  const choose = (locks: CordLock[], cords = 4, own?: CordLock) => {
    const found = chooseLock({ ...resolved, locks, cord: CORD, lock: own } as never, cords);
    return {
      id: found.lock.id,
      forced: found.forced,
      refused: found.refused.map(({ lock: one, reason }) => [one.id, plain(reason)]),
    };
  };

  it("is the first with nothing to mend; else the first that is not refused; each before it says why not", () => {
    const off = "is stated for cord of 1.6 mm; this cord of 1.4 mm is 13 % off";
    const few = "takes at most 2 cords; this shade has 4";
    expect(choose([lock("off", OFF), lock("few", { cordsMax: 2 }), lock("good")])).toEqual({
      ...{
        id: "good",
        forced: false,
        refused: [
          ["off", off],
          ["few", few],
        ],
      },
    });
    expect(choose([lock("few", { cordsMax: 2 }), lock("off", OFF)])).toEqual({
      ...{ id: "off", forced: false, refused: [["few", few]] },
    });
    expect(choose([lock("both", { ...OFF, cordsMax: 2 }), lock("good")]).refused).toEqual([
      ["both", `${few}; it ${off}`],
    ]);
    // What is only worth knowing refuses none.
    const near = { endGapMm: 1.3 };
    expect(misfits(lock("near", near), CORD, 4).map(({ severity }) => severity)).toEqual(["note"]);
    expect(choose([lock("near", near), lock("good")])).toEqual({ id: "near", forced: false, refused: [] });
  });

  it("is the maker's own, forced only where it is refused", () => {
    expect(choose([lock("good")], 4, lock("off", OFF))).toEqual({ id: "off", forced: false, refused: [] });
    expect(choose([lock("good")], 4, lock("few", { cordsMax: 2 }))).toEqual({
      id: "few",
      forced: true,
      refused: [],
    });
  });

  it("is the one that misses by least where none will do: by its share of cords and of the diameter", () => {
    const thick = (cordMinMm: number, cordMaxMm: number, cordsMax = 6) => ({
      cordMinMm,
      cordMaxMm,
      cordsMax,
    });
    // Off by 0.6 of 1.4 mm, by 0.4, and by half of the cords.
    expect(choose([lock("a", thick(2, 3)), lock("b", thick(1.8, 3)), lock("c", thick(1.4, 1.4, 2))]).id).toBe(
      "b",
    );
    expect(choose([lock("a", thick(0.5, 0.8)), lock("b", thick(0.5, 1))]).id).toBe("b");
    expect(choose([lock("a", thick(0.5, 0.8)), lock("c", thick(1.4, 1.4, 3))]).id).toBe("c");
    // Misses add up.
    expect(choose([lock("a", thick(1.8, 3, 3)), lock("b", thick(2, 3))]).id).toBe("b");
    const nominal = (cordNominalMm: number) => ({ ...OFF, cordNominalMm });
    expect(choose([lock("a", nominal(3)), lock("b", nominal(2))])).toMatchObject({ id: "b", forced: true });
    expect(choose([lock("a", nominal(0.6)), lock("b", nominal(0.9))]).id).toBe("b");
  });

  it("must be chosen from some", () => {
    expect(() => choose([])).toThrow("invalid locks: none at 0");
  });
});

function judged(locks: CordLock[], over: { columns?: number; cords?: object[]; shade?: object } = {}) {
  const { columns = 4, cords = [], shade = {} } = over;
  const grid = { columns: Array.from({ length: columns }, (_, i) => ({ number: i + 1, xMm: 100 * i })) };
  return saidOf(
    judgeFit({
      ...{ grid, liftParts: { lock: locks[0], forced: true } },
      shade: { ...resolved, locks, cord: CORD, parts: { ...NO_PARTS, cords }, ...shade },
    } as unknown as LockInput),
  );
}

describe("what is said of a lock that does not go with its cords", () => {
  const demo = { demo: true } as const;
  const of = (id: string, ...given: Parameters<typeof judged>) =>
    judged(...given).find((one) => one.id === id);

  it("offers other locks and cords where it is to be mended, two of each; nothing where it is only to be known", () => {
    const cords = [
      CORD,
      { ...CORD, id: "thick", name: "Thick", diameterMm: 1.6 },
      { ...CORD, id: "thin", diameterMm: 0.5 },
    ];
    const others = ["b", "c", "d"].map((id) => lock(id, demo));
    expect(
      of("lift.cord-diameter", [lock("a", { ...OFF, ...demo }), lock("few", { cordsMax: 2 }), ...others], {
        cords,
      }),
    ).toMatchObject({
      severity: "fix",
      remedies: [
        ["Use “Lock b”", "lift/lock", "b"],
        ["Use “Lock c”", "lift/lock", "c"],
        ["Use “Thick”", "lift/cord", "thick"],
      ],
    });
    const note = of("lift.end-gap", [lock("a", { endGapMm: 1.3 }), ...others], { cords });
    expect(note).toMatchObject({ severity: "note", remedies: [] });
    const unproven = of("lift.capacity-unknown", [lock("a", { cordsMax: undefined }), ...others], { cords });
    expect(unproven).toMatchObject({ severity: "unproven", remedies: [] });
  });

  it("of too many cords offers no other cord, but as many columns as the roomiest lock takes", () => {
    const cords = [{ ...CORD, id: "other" }];
    const few = (locks: CordLock[], columns: number) =>
      of("lift.too-many-cords", locks, { columns, cords })?.remedies;
    const label = (count: number) => `Use ${count} columns, with ribs so that the folds do not bow`;
    expect(few([lock("a", demo), lock("b", { ...demo, cordsMax: 8, dividerWires: 3 })], 9)).toEqual([
      [label(8), "columns/count", 8],
    ]);
    expect(few([lock("a", demo), lock("b", { ...demo, cordsMax: 9, dividerWires: 4 })], 9)).toEqual([
      ["Use “Lock b”", "lift/lock", "b"],
    ]);
    // One column is no shade; a lock that does not take the cord at all is none of them.
    expect(few([lock("a", { ...demo, cordsMax: 1, dividerWires: 0 })], 4)).toEqual([]);
    expect(few([lock("a", { ...demo, cordsMax: 2, dividerWires: 0 })], 4)).toEqual([
      [label(2), "columns/count", 2],
    ]);
    const wrong = lock("b", { ...demo, cordsMax: 8, cordMinMm: 3, cordMaxMm: 4 });
    expect(few([lock("a", demo), wrong], 9)).toEqual([[label(6), "columns/count", 6]]);
  });

  it("of the maker's own, none of which will do, offers cords that one of them takes, and fewer columns", () => {
    const cords = [
      CORD,
      ...["x", "y", "z"].map((id) => ({ id, name: id, diameterMm: 2 })),
      { id: "w", name: "w", diameterMm: 5 },
    ];
    const own = [lock("a", { cordMinMm: 2, cordMaxMm: 2 }), lock("b", { cordMinMm: 2, cordMaxMm: 2 })];
    expect(of("lift.no-own-lock", own, { cords })?.remedies).toEqual([
      ["Use “x”", "lift/cord", "x"],
      ["Use “y”", "lift/cord", "y"],
    ]);
    expect(
      of("lift.no-own-lock", [lock("a")], { columns: 8 })?.remedies.map(([, setting, value]) => [
        setting,
        value,
      ]),
    ).toEqual([["columns/count", 6]]);
    expect(of("lift.no-own-lock", [lock("a", { cordMinMm: 2, cordMaxMm: 2, cordsMax: 2 })])?.text).toContain(
      "takes at most 2 cords; this shade has 4; it is made for cord of 2 mm to 2 mm",
    );
  });

  it("names what nobody measured of it, and what is drawn in its place", () => {
    const sizes = ["housingLengthMm", "dividerWires"] as const;
    const text = (over: Partial<CordLock>) => of("lift.lock-unmeasured", [{ ...lock("a"), ...over }])?.text;
    expect(text({})).toBeUndefined();
    expect(text({ unmeasured: [...sizes] })).toMatch(
      /^Not known of “Lock a”: the length along the board \(drawn as 30 mm\) and the number of slots \(drawn as 3\)\./,
    );
    expect(text({ unmeasured: ["dividerWires"], slots: 5 })).toContain(
      "the number of slots (wires and slots given do not agree; drawn as 3)",
    );
    expect(text({ unmeasured: ["housingWidthMm", "housingHeightMm"] })).toContain(
      "the width across the board (drawn as 22 mm) and the height (drawn as 24 mm)",
    );
  });
});

describe("locks by cords", () => {
  it("the gravest reason gives the word, one that no test can lift before those that leave it open", () => {
    const word = (over: Partial<CordLock>, cords = 4, diameterMm = 1.4) =>
      fitCell({ ...lock("a"), ...over } as CordLock, { ...CORD, diameterMm }, cords).verdict;
    expect(word({})).toBe("fits");
    expect(word({}, 7)).toBe("too-many");
    expect(word({}, 7, 0.9)).toBe("jams");
    expect(word({}, 7, 2)).toBe("too-thick");
    expect(word(OFF)).toBe("not-known");
    expect(word({ ...OFF, cordsMax: 2 })).toBe("too-many");
    expect(word({ thinCordMm: 1.4 }, 2)).toBe("inner-slots");
    expect(fitCell({ ...lock("a"), unmeasured: ["dividerWires"] }, CORD, 4)).toMatchObject({
      ...{
        verdict: "not-known",
        reasons: ["has wires or slots that nobody counted"],
        lockId: "a",
        cordId: "cord",
      },
    });
    expect(fitCell({ ...lock("a"), unmeasured: ["housingWidthMm"] }, CORD, 4)).toMatchObject({
      verdict: "fits",
      reasons: [],
    });
    expect(fitCell({ ...lock("a"), unmeasured: ["dividerWires"] }, CORD, 7).verdict).toBe("too-many");
  });

  it("are of the maker's own cords where there are any, and of the shade's in any case; without a shade they are the maker's", () => {
    const demo = { id: "demo", name: "Demo", diameterMm: 1.4, demo: true };
    const other = { ...demo, id: "other" };
    const own = { id: "own", name: "Own", diameterMm: 1.4 };
    const of = (cords: object[], shadeCord?: string) =>
      ownFit({ locks: [lock("a")], cords } as never, 7, shadeCord);
    const ids = (...given: Parameters<typeof of>) => of(...given).cords.map(({ id }) => id);
    expect(ids([own, demo, other])).toEqual(["own"]);
    expect(ids([own, demo, other], "other")).toEqual(["own", "other"]);
    expect(ids([demo, other], "other")).toEqual(["demo", "other"]);
    expect(of([own]).rows[0]?.cells[0]?.reasons).toEqual(["takes at most 6 cords; you have 7"]);
    expect(of([own], "own").rows[0]?.cells[0]?.reasons).toEqual(["takes at most 6 cords; this shade has 7"]);
    expect(of([own])).toMatchObject({
      cordCount: 7,
      cords: [own],
      rows: [{ lock: { id: "a", name: "Lock a" } }],
    });
  });
});

describe("what to note when threading", () => {
  const rig = (slots: object[], faults: string[] = [], over: object = {}) =>
    saidOf(
      judgeRig(
        { ...resolved, cord: CORD, eye: { ...resolved.eye, outsideDiameterMm: 12 }, ...over },
        { eyesMm: [1, 2, 3, 4] } as never,
        { gap: { outer: 1 } } as never,
        {
          slots,
          cords: [1, 2, 3, 4].map((number) => ({
            number,
            entersFrom: number === 4 ? "right" : "left",
            cutMm: 2000,
          })),
        } as never,
        faults,
      ),
    );
  const APART = [
    { number: 1, cords: [1, 2] },
    { number: 2, cords: [3] },
    { number: 3, cords: [4] },
  ];

  it("a slot that takes cords from both ends is named with them", () => {
    expect(rig(APART)).toEqual([]);
    expect(
      rig([
        { number: 1, cords: [1, 2] },
        { number: 2, cords: [3, 4] },
      ]),
    ).toEqual([
      {
        ...{
          id: "rig.shared-slot",
          stage: "rig",
          severity: "note",
          setting: undefined,
          figures: undefined,
          remedies: [],
        },
        text: "The slots do not suffice to keep the cords of both ends apart: slot 2 takes cords 3 and 4 from both. Thread them so that neither winds around the other.",
      },
    ]);
  });

  it("a rig that fails its own check is not to be threaded: its first three faults are named", () => {
    expect(rig(APART, ["one", "two", "three", "four"])).toEqual([
      {
        ...{
          id: "rig.check-failed",
          stage: "rig",
          severity: "stop",
          setting: undefined,
          figures: undefined,
          remedies: [],
        },
        text: "The drawn rig does not pass its own check: one; two; three. Do not thread it so.",
      },
    ]);
  });

  it("an eye is crowded by the cords of the larger side: a bundle fills 70 %, an eye opens 0.6 of its diameter", () => {
    // Three cords of 1.4 mm: 1.4·√(3 / 0.7) = 2.898 mm, an eye of 4.83 mm.
    const eye = (outsideDiameterMm: number) =>
      rig(APART, [], { eye: { ...resolved.eye, outsideDiameterMm } });
    expect(eye(4.84)).toEqual([]);
    expect(eye(4.8)).toEqual([
      {
        ...{
          id: "rig.crowded-eye",
          stage: "rig",
          severity: "fix",
          setting: "lift/eye",
          figures: undefined,
          remedies: [],
        },
        text: "3 cords of 1.4 mm run through the last eye before the lock: a bundle of about 2.9 mm in an opening of about 2.88 mm. Take a larger eye, or a pulley for each cord there.",
      },
    ]);
  });

  it("a cord longer than its spool is told; one as long is not", () => {
    const spool = (spoolMm: number) => rig(APART, [], { cord: { ...CORD, spoolMm } });
    expect(spool(2000)).toEqual([]);
    expect(spool(1999)).toMatchObject([
      { id: "rig.short-spool", stage: "rig", severity: "stop", setting: "lift/cord" },
    ]);
  });
});
