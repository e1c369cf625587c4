import { describe, expect, it } from "vitest";
import {
  backed,
  bare,
  fromTo,
  hanging,
  heightless,
  looped,
  pulls,
  rears,
} from "../../../../test/safety/cords.ts";
import type { CordGeometry } from "../cord-geometry.ts";
import * as facts from "./facts.ts";
import { leansOnClips } from "./lead.ts";
import type { CheckedAgainst, QuantityFact } from "./quantity.ts";

/** Tops 2400 mm above the floor, cords and loops from 50 mm below: what hangs 800 mm ends 1550 mm above it. */
const of = (fact: QuantityFact, geometry: CordGeometry, ask: CheckedAgainst = {}) =>
  fact.of({ geometry, tag: { signalMm: 5, textMm: 2.5 } }, ask);
const open = { over: "not-proven", within: "not-proven" };
const decides = { over: "failed", within: "not-shown-to-fail" };
const NO_HEIGHT = "The height of the window above the floor is not known.";
const NO_LOOP = { absent: "No operating loop hangs on this lift." };
const NO_PULL = { absent: "No pull cord hangs on this lift." };
const railed = (count = 2) => pulls(400, { raises: "top-rail", count });

describe("a cleat", () => {
  it("is as high as the lowest, and decides where the window’s height is known", () => {
    const two = bare({ pulls: [pulls(300), pulls(300, { cleatAboveFloorMm: 1500 })] });
    expect(of(facts.cleatHeight, two)).toEqual({
      ...{ ...decides, value: 1500, raise: 1, cords: "cleat" },
      why: "Height of the cleat above the floor",
    });
    expect(of(facts.cleatHeight, heightless(two))).toMatchObject({
      ...{ value: 1500, within: "not-proven", test: "wind-on-cleat" },
      why: "The height of the window above the floor is not known, so that the cleat may hang above what its cord comes from",
    });
    expect(of(facts.cleatHeight, bare())).toEqual(NO_PULL);
  });

  it("takes what hangs raised, if it takes it", () => {
    const found = of(facts.cordToWind, hanging(fromTo(300, 1500)));
    expect(found).toMatchObject({ ...open, value: 1500, raise: 1 });
    expect(found).toHaveProperty(
      "why",
      expect.stringMatching(/^So much cord hangs.*shows when it is wound\.$/),
    );
    expect(of(facts.cordToWind, bare())).toEqual(NO_PULL);
  });

  // From the lock at 2350 mm it is 750 mm down to a cleat at 1600 mm.
  it.each([
    [900, 150],
    [751, 1],
    [750, 0],
    [700, 0],
  ])("%d mm raised reach %d mm below it", (raisedMm, belowMm) => {
    const one = of(facts.tailBelowCleat, hanging(fromTo(300, raisedMm)));
    expect(one).toMatchObject({ value: belowMm, raise: 1, over: "not-proven", within: "not-shown-to-fail" });
    const two = of(facts.tailBelowCleat, hanging(fromTo(300, raisedMm), { count: 2 }));
    expect(two).toMatchObject({ ...open, value: belowMm });
  });

  it("above its lock leaves all of the cord below it; at a window of unknown height nothing is known", () => {
    const astray = hanging(300, { cleatAboveFloorMm: 2380 });
    expect(of(facts.tailBelowCleat, astray)).toMatchObject({ value: 300 });
    expect(of(facts.tailBelowCleat, heightless(astray))).toEqual({ ...open, raise: 1, why: NO_HEIGHT });
    expect(of(facts.tailBelowCleat, bare())).toEqual(NO_PULL);
  });
});

describe("a loop", () => {
  it("that comes apart: how low it ends, how long it hangs, and at what load is not known", () => {
    const breaks = looped(600, "breakaway");
    expect(of(facts.breakawayLoopLowPoint, breaks)).toEqual({
      ...{ ...decides, value: 1750, raise: 0, cords: "loop" },
      why: "Lower end of the loop above the floor",
    });
    expect(of(facts.breakawayLoopLowPoint, looped(2500, "breakaway"))).toMatchObject({ value: 0 });
    expect(of(facts.breakawayLoopLowPoint, heightless(breaks))).toEqual({
      ...open,
      raise: 0,
      why: NO_HEIGHT,
    });
    expect(of(facts.breakawayLoopLength, breaks)).toEqual({
      ...{ ...decides, value: 600, raise: 0, cords: "loop" },
      why: "What hangs of the loop",
    });
    expect(of(facts.breakawayLoad, breaks)).toEqual({
      ...{ ...open, raise: 0 },
      why: "At what load the loop comes apart shows when it is tried.",
    });
    for (const fact of [facts.breakawayLoad, facts.breakawayLoopLowPoint, facts.breakawayLoopLength])
      for (const geometry of [looped(600), bare()]) expect(of(fact, geometry)).toEqual(NO_LOOP);
  });

  it("counts where it reaches below the height that is asked, 1750 mm above the floor", () => {
    const length = (belowFloorMm?: number) =>
      of(facts.operatingLoopLength, looped(600), belowFloorMm === undefined ? {} : { belowFloorMm });
    expect(length(1751)).toMatchObject({ ...decides, value: 600, cords: "loop" });
    expect(length()).toMatchObject({ value: 600 });
    expect(length(1750)).toEqual({ absent: "The loop does not hang as low as this rule asks." });
    expect(of(facts.operatingLoopLength, heightless(looped(600)))).toEqual({
      ...open,
      raise: 0,
      why: NO_HEIGHT,
    });
    expect(of(facts.operatingLoopLength, bare())).toEqual(NO_LOOP);
  });

  it("on a guide that a child can reach: whether it stays there shows on the wall", () => {
    const keeps = (geometry: CordGeometry, ask: CheckedAgainst = { belowFloorMm: 1751 }) =>
      of(facts.guideKeepsCord, geometry, ask);
    const tried = "Whether a child can take the cord out of its guide shows when it is tried on the wall.";
    expect(keeps(looped(600))).toEqual({ ...open, raise: 0, why: tried });
    expect(keeps(heightless(looped(600)))).toMatchObject({ why: tried });
    const high = { absent: "The guide does not sit as low as this rule asks." };
    expect(keeps(looped(600), { belowFloorMm: 1750 })).toEqual(high);
    expect(keeps(looped(600), {})).toEqual(high);
    for (const geometry of [looped(600, "none"), bare()])
      expect(keeps(geometry)).toEqual({ absent: "No guide holds a cord of this shade." });
  });

  it("without a device hangs loose; with one it shows on the finished shade", () => {
    expect(of(facts.loopDeviceFixed, looped(600, "none"))).toEqual({
      ...{ ...decides, value: 0, raise: 0, cords: "loop" },
      why: "The loop hangs loose, without a device.",
    });
    expect(of(facts.loopDeviceFixed, looped(600))).toEqual({
      ...{ ...open, raise: 0 },
      why: "Whether the device is attached in the workshop, and the shade useless until it is fixed, shows on the finished shade.",
    });
    expect(of(facts.loopDeviceFixed, bare())).toEqual(NO_LOOP);
  });
});

describe("cords that are counted", () => {
  it("free ends, of how many locks so ever", () => {
    const free = (...hung: CordGeometry["pulls"]) => of(facts.freeHangingCords, bare({ pulls: hung }));
    const said = { ...decides, raise: 1 };
    expect(free()).toEqual({ ...said, value: 0, why: "No cord hangs free.", cords: "rail" });
    expect(free(pulls(300))).toEqual({
      ...said,
      value: 1,
      why: "One cord hangs free at the front.",
      cords: "front",
    });
    expect(free(pulls(300, { count: 3 }), railed())).toEqual({
      ...{ ...said, value: 5, cords: "front" },
      why: "5 cords hang free at the front.",
    });
    expect(free(railed())).toMatchObject({ value: 2, cords: "rail" });
  });

  it("in one connector: the most of any lock", () => {
    const joined = (...hung: CordGeometry["pulls"]) => of(facts.cordsInConnector, bare({ pulls: hung }));
    const three = pulls(300, { count: 3, joinedMm: fromTo(75, 75) });
    expect(joined(three, pulls(300, { count: 5 }))).toEqual({
      ...{ ...decides, value: 3, raise: 1, cords: "front" },
      why: "3 cords run into one connector.",
    });
    expect(joined(pulls(300))).toEqual({ ...decides, value: 0, raise: 0, why: "No connector joins cords." });
    expect(of(facts.collectorOpens, bare({ pulls: [three] }))).toEqual({
      ...{ ...open, raise: 1 },
      why: "At what load the connector comes apart shows when it is tried.",
    });
    expect(of(facts.collectorOpens, hanging(300))).toEqual({ absent: "No connector collects cords." });
  });

  const reach = (geometry: CordGeometry) => of(facts.accessibleCords, geometry);

  it("in reach, at the front, at the back and a lead, by the first of them", () => {
    const rear = rears([200, 200]);
    expect(reach(bare({ pulls: [pulls(300, { count: 2 })], rear }))).toEqual({
      ...{ ...decides, value: 5, raise: 1, cords: "front" },
      why: "Cords in reach: 2 at the front, 3 at the back.",
    });
    expect(reach(looped(600, "tensioner", { rear }))).toMatchObject({ value: 4, raise: 1, cords: "loop" });
    expect(reach(bare({ pulls: [railed()] }))).toMatchObject({ value: 2, cords: "rail" });
    expect(reach(bare({ rear }))).toMatchObject({ value: 3, raise: 0, cords: "back" });
    expect(reach(bare({ kind: "motor", leadLooseMm: 100 }))).toEqual({
      ...{ ...decides, value: 1, raise: 0, cords: "lead" },
      why: "Cords in reach: 0 at the front, 0 at the back, and the motor’s lead.",
    });
  });

  it("a sewn sleeve hides them but for the board; what leans on sleeve or clips is not proven", () => {
    expect(reach(backed([200], { guide: "enclosed", boardSpansMm: [150] }))).toMatchObject({ value: 3 });
    expect(reach(backed([200], { guide: "enclosed" }))).toMatchObject({ ...open, test: "pull-enclosure" });
    expect(reach(bare({ kind: "motor", leadLooseMm: 0 }))).toMatchObject({ ...open, test: "motor-lead" });
    expect(reach(bare())).toEqual({ ...decides, value: 0, raise: 0, why: "This lift has no cord." });
  });
});

describe("what leans on a device or a sleeve", () => {
  const relies = (geometry: CordGeometry) => of(facts.reliesOnDevice, geometry);

  it("a hanging cord on its cleat, a loop on what its owner fixes, rear cords on a sleeve, else nothing", () => {
    expect(relies(hanging(300))).toEqual({
      ...{ ...decides, value: 1, raise: 1, cords: "front" },
      why: "The hanging cord is out of reach only while it is wound on its cleat.",
    });
    expect(relies(bare({ pulls: [railed()] }))).toMatchObject({ value: 1, cords: "rail" });
    expect(relies(looped(600))).toEqual({
      ...{ ...decides, value: 1, raise: 0, cords: "loop" },
      why: "The loop is held only by the device that its owner fixes.",
    });
    expect(relies(backed([200], { guide: "ring-locked" }))).toEqual({
      ...{ ...open, raise: 0 },
      why: "The rear cords lean on a sleeve. They count only if no hand takes them off without a tool.",
    });
    const none = { ...decides, value: 0, raise: 0, why: "Nothing on this lift leans on a device." };
    expect([relies(backed([200])), relies(bare())]).toEqual([none, none]);
  });

  it("cords hidden in a sleeve, and those that can be reached", () => {
    const hidden = (geometry: CordGeometry) => of(facts.hiddenCordExposed, geometry);
    expect(hidden(backed([200], { guide: "enclosed" }))).toMatchObject({
      ...open,
      why: expect.stringMatching(/^The lift cords are hidden in a sewn sleeve\./),
    });
    for (const geometry of [backed([200]), backed([200], { guide: "ring-locked" }), bare()])
      expect(hidden(geometry)).toEqual({ absent: "No cord of this shade is counted as out of reach." });
    const inner = (geometry: CordGeometry) => of(facts.innerCordsReachable, geometry);
    expect(inner(backed([200], { guide: "enclosed" }))).toHaveProperty(
      "why",
      expect.stringMatching(/sewn by hand/),
    );
    expect(inner(backed([200]))).toHaveProperty("why", expect.stringMatching(/can be reached at the back/));
    expect(inner(bare())).toEqual({ absent: "No lift cord runs up the back." });
  });

  it("what ends at the front, at its lowest over the travel", () => {
    const secured = (geometry: CordGeometry) => of(facts.securedByDevice, geometry);
    expect(secured(hanging(fromTo(300, 1500)))).toMatchObject({
      ...{ value: 850, raise: 1, over: "failed", within: "not-proven", cords: "front" },
      why: expect.stringMatching(/^So high ends what hangs/),
    });
    expect(secured(looped(600))).toMatchObject({ value: 1750, cords: "loop" });
    expect(secured(heightless(looped(600)))).toEqual({ ...open, raise: 1, why: NO_HEIGHT });
    expect(secured(bare())).toEqual({ absent: "No pull cord or loop hangs on this lift." });
  });

  it("a lead, whether or not somebody has followed it", () => {
    const why = (over: Partial<CordGeometry>) => leansOnClips(bare({ kind: "motor", ...over }))?.why;
    expect(why({})).toBe("The motor’s lead is a cord too, and how far it hangs free was not said.");
    expect(why({ leadLooseMm: 0 })).toBe(
      "The motor’s lead is held by its clips alone. That they hold it under a pull shows on the wall.",
    );
    expect(leansOnClips(bare())).toBeUndefined();
  });
});

describe("what no plan shows", () => {
  it("letters of the tag count once they are everywhere that they are asked for", () => {
    for (const [fact, mm] of [
      [facts.signalWordHeight, 5],
      [facts.warningTextHeight, 2.5],
    ] as const)
      expect(of(fact, bare())).toMatchObject({ value: mm, over: "failed", within: "not-proven" });
  });

  it("a remote control comes with a motor alone", () => {
    expect(of(facts.buttonCells, bare({ kind: "motor" }))).toMatchObject({
      ...open,
      why: expect.stringMatching(/^Which cells the remote control runs on/),
    });
    expect(of(facts.buttonCells, bare())).toEqual({ absent: "No remote control comes with this lift." });
  });

  it.each([
    [facts.instructionsFollowed, "It is so once the shade has been hung by them."],
    [facts.smallParts, "Only a pull at each part shows whether it stays on."],
    [facts.leadContent, "Only a laboratory, or the papers of whoever made the parts, can tell."],
    [facts.warningsAndLabels, "It is there once you have put it on. The tag of this plan is a start."],
    [facts.makerLabel, "It is there once you have put your own label on."],
    [facts.refersToLaw, "The tag of this plan names no law. Look through what else you print and publish."],
  ] as const)("is open until it is done: %#", (fact, why) => {
    expect(of(fact, bare())).toEqual({ ...open, raise: 0, why });
  });
});
