import { describe, expect, it } from "vitest";
import { expectNear } from "../../../../test/near.ts";
import { backed, bare, fromTo, looped, pulls, rears } from "../../../../test/safety/cords.ts";
import { workingOf } from "../../../figures/index.ts";
import type { CordGeometry } from "../cord-geometry.ts";
import { headOpening, openingMm } from "./opening.ts";
import { cordLowPoint, longest, operatingCordLength } from "./pull-cords.ts";
import {
  anyLoopLength,
  cordBetweenContacts,
  guidedLoopLength,
  loopPerimeter,
  rearGuideSpacing,
} from "./rear-cords.ts";

/** Two spans up the back: 150 mm between two rings, 200 mm from the top ring to the board; 30 mm more cloth in each. */
const behind = (over: Partial<CordGeometry> = {}, board: number[] = []) =>
  bare({
    rear: backed([150, 200], { boardSpansMm: board }, {}, 30).rear,
    travelMm: 350,
    ...over,
  }) as CordGeometry;
const lead = (leadLooseMm: number, over: Partial<CordGeometry> = {}) =>
  behind({ kind: "motor", leadLooseMm, leadLowMm: 900, ...over });
const joined = (joinedMm: number) =>
  behind({ pulls: [pulls(600, { count: 2, joinedMm: fromTo(joinedMm, joinedMm) })] });
const loop = (dropMm: number) => looped(dropMm).loop;

describe("the longest cord between two points that hold it is named by the cord that it is of", () => {
  it.each([
    ["back", "the cord between the top ring and the board", behind(), 200],
    ["back", "the cord between two rings", backed([250, 200]), 250],
    ["back", "the cord between the top ring and the board", behind({}, [200]), 200],
    ["board", "the cord between two eyes on the board", behind({}, [100, 201]), 201],
    ["rail", "the top rail’s cord between two eyes on the board", behind({ railSpansMm: [90, 300] }), 300],
    [
      "loop",
      "the side of the loop between its wheel and its device",
      looped(700, "tensioner", { rear: behind().rear }),
      700,
    ],
    ["lead", "the motor’s lead between two clips", lead(260), 260],
  ] as const)("%s: %s", (cords, text, geometry, mm) => {
    expect(cordBetweenContacts.at(geometry, 0, {})).toBe(mm);
    expect(cordBetweenContacts.what(geometry, 0, {})).toEqual({ text, cords });
  });

  it("guides of the rear cords are told by the distance between them", () => {
    expect(rearGuideSpacing.what(behind(), 0, {})).toEqual({
      text: "the distance between the top ring and the board",
      cords: "back",
    });
    // Half of the top stretch is gathered once all below it is, at 150 mm of 350: 100 mm further up, 100 mm are left.
    expect(rearGuideSpacing.at(behind(), 150 / 350, {})).toBe(200);
    expectNear(rearGuideSpacing.at(behind(), 250 / 350, {}), 100, 1e-9);
  });
});

it("of free cords as long as each other the first is named, one that is longer before it", () => {
  const free = (firstMm: number, otherMm: number) =>
    longest(bare({ pulls: [pulls(firstMm), pulls(otherMm, { raises: "top-rail", count: 2 })] }), 0);
  expect(free(300, 300)).toEqual({ text: "the cord below its lock", cords: "front" });
  expect(free(300, 301)).toEqual({ text: "the cords of the top rail below their lock", cords: "rail" });
  const eyed = (count: number) => longest(bare({ pulls: [pulls(300, { from: "last eye", count })] }), 0).text;
  expect([eyed(1), eyed(2)]).toEqual(["the cord below the last eye", "the cords below the last eye"]);
});

describe("the longest loop is named by what it is of", () => {
  // Cord and cloth of the top stretch: 200 + 230 = 430 mm around.
  it.each([
    ["back", "the loop of cord and cloth between the top ring and the board", behind(), 430],
    ["front", "the loop between the lock and the connector of the cords", joined(216), 432],
    ["back", "the loop of cord and cloth between the top ring and the board", joined(214), 430],
    ["loop", "the operating loop", behind({ loop: loop(215) as never }), 430],
    ["lead", "the loop of the motor’s lead, drawn together", lead(216), 432],
    ["back", "the loop of cord and cloth between the top ring and the board", lead(215), 430],
    ["loop", "the operating loop", lead(216, { loop: loop(217) as never }), 434],
  ] as const)("%s: %s", (cords, text, geometry, mm) => {
    expect(loopPerimeter.at(geometry, 0, {})).toBe(mm);
    expect(loopPerimeter.what(geometry, 0, {})).toEqual({ text, cords });
  });

  it("and its sum is shown where it is cord and cloth that make it, at the height that it is told of", () => {
    const sum = (geometry: CordGeometry, raise = 0) => {
      const figure = loopPerimeter.working?.(geometry, raise, {});
      return figure && workingOf(figure).inputs.map(({ value }) => value);
    };
    expect(sum(behind())).toEqual([200, 230]);
    expect(sum(joined(214))).toEqual([200, 230]);
    for (const other of [
      joined(215),
      joined(300),
      lead(215),
      lead(400),
      behind({ loop: loop(215) as never }),
    ])
      expect(sum(other)).toBeUndefined();
    // 250 mm up the lower fold is gathered, and 100 mm of the top one.
    const raised = sum(behind(), 250 / 350);
    expectNear(raised?.[0] ?? 0, 100, 1e-9);
    expect(raised?.[1]).toBe(230);
  });

  it("half of it where loops are told by half of the way around", () => {
    expect(guidedLoopLength.at(behind(), 0, {})).toBe(215);
    expect(guidedLoopLength.what(behind(), 0, {})).toEqual({
      text: "the loop of guided cord",
      cords: "back",
    });
    expect(guidedLoopLength.at(lead(216), 0, {})).toBe(216);
    expect(guidedLoopLength.what(lead(216), 0, {}).cords).toBe("lead");
    expect(guidedLoopLength.what(lead(215), 0, {}).cords).toBe("back");
    const hung = behind({ pulls: [pulls(216, { count: 2 })] });
    expect(anyLoopLength.at(hung, 0, {})).toBe(216);
    expect(anyLoopLength.what(hung, 0, {})).toEqual({
      text: "the loop that the hanging cords can form",
      cords: "front",
    });
    expect(anyLoopLength.what(behind({ pulls: [pulls(215, { count: 2 })] }), 0, {}).cords).toBe("back");
  });
});

describe("the largest round opening", () => {
  it("of a loop of cord alone is its way around over π", () => {
    const of = (geometry: CordGeometry) => headOpening.at(geometry, 0, {});
    expectNear(of(looped(600)), 1200 / Math.PI, 1e-9);
    expectNear(
      of(bare({ pulls: [pulls(600, { count: 2, joinedMm: fromTo(300, 300) })] })),
      600 / Math.PI,
      1e-9,
    );
    expectNear(of(bare({ kind: "motor", leadLooseMm: 250 })), 500 / Math.PI, 1e-9);
    expectNear(of(looped(600, "tensioner", { kind: "motor", leadLooseMm: 700 })), 1400 / Math.PI, 1e-9);
    expect(headOpening.what(looped(600), 0, {})).toEqual({
      text: "the largest round opening in a loop of cord",
      cords: "loop",
    });
  });

  it("of cord and cloth is named so only where it is the larger", () => {
    const behindMm = openingMm(200, 230);
    const with_ = (perimeterMm: number) => behind({ loop: { ...looped(1).loop, perimeterMm } as never });
    expect(headOpening.at(with_(behindMm * Math.PI * 0.99), 0, {})).toBe(behindMm);
    expect(headOpening.what(with_(behindMm * Math.PI * 0.99), 0, {})).toEqual({
      text: "the largest round opening between cord and cloth of the fold on its way",
      cords: "back",
    });
    expect(headOpening.what(with_(behindMm * Math.PI * 1.01), 0, {}).text).toContain("in a loop of cord");
  });
});

it("behind a sewn sleeve nothing opens, and of a loop as long as the cords the cords are named", () => {
  const sewn = bare({ rear: { ...rears([150, 200]), guide: "enclosed" }, travelMm: 350 });
  for (const span of sewn.rear?.spans ?? []) span.clothMm += 30;
  expect([0, 0.3, 1].map((raise) => headOpening.at(sewn, raise, {}))).toEqual([0, 0, 0]);
  const both = (dropMm: number) => looped(dropMm, "tensioner", { pulls: [pulls(300)] });
  expect([299, 300, 301].map((mm) => operatingCordLength.what(both(mm), 0, {}).cords)).toEqual([
    "front",
    "front",
    "loop",
  ]);
});

describe("of what a rule asks below a height", () => {
  // The lower ring hangs 350 mm below the top line at 2400 mm, the upper 200 mm.
  const closed = () => bare({ rear: { ...rears([150, 200]), guide: "ring-locked" }, travelMm: 350 });

  it("closed guides are leant on where any of them hangs as low", () => {
    const leans = (belowFloorMm: number) => guidedLoopLength.leansOn?.(closed(), { belowFloorMm })?.test;
    expect([leans(2049), leans(2050), leans(2199), leans(2200)]).toEqual([
      undefined,
      "pull-enclosure",
      "pull-enclosure",
      "pull-enclosure",
    ]);
  });

  it("a lead that is clipped whole has no low point; one that hangs free has, and lies on the floor at the lowest", () => {
    const low = (leadLooseMm: number, leadLowMm: number) =>
      cordLowPoint.at(bare({ kind: "motor", leadLooseMm, leadLowMm }), 0, {});
    expect(low(0, 900)).toBe(Number.POSITIVE_INFINITY);
    expect(low(1, 900)).toBe(900);
    expect(low(1, -50)).toBe(0);
  });
});
