import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { backed, bare, hanging, heightless, looped, pulls } from "../../../test/safety/cords.ts";
import { PHYSICAL_TESTS, type RuleOutcome, type SafetyReview } from "../../shade-plan/index.ts";
import { GRAVITY, massText } from "../../units/index.ts";
import { rulesFor } from "../rules/rules-for.ts";
import { cleatAstray } from "./cleat-astray.ts";
import { comesToText } from "./comes-to.ts";
import { unmetCondition } from "./conditions.ts";
import { cordCause } from "./cord-causes.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import { evaluate } from "./evaluate.ts";
import { judgeFire } from "./judge-fire.ts";
import { judgeHeights } from "./judge-heights.ts";
import { judgeNeighbours } from "./judge-neighbours.ts";
import { physicalTest } from "./physical-tests.ts";
import { ResultWriter } from "./rule-results.ts";
import { mmText, outcomeCountText, raiseText, upperFirst, valueAndLimit } from "./texts.ts";

const METRIC = { system: "metric", ruler: "1 mm" } as const;
const INCHES = { system: "imperial", ruler: "1/8 in" } as const;
const plain = (text = "") => text.replaceAll("\u00a0", " ");

describe("when a rule speaks of a shade", () => {
  const why = (condition: Parameters<typeof unmetCondition>[0], geometry = bare()) =>
    unmetCondition(condition, geometry);

  it("rows for known and unknown heights of the window exclude each other", () => {
    const known = [{ if: "installation-height-known" }] as const;
    const unknown = [{ if: "installation-height-unknown" }] as const;
    expect([why(known), why(unknown, heightless(bare()))]).toEqual([undefined, undefined]);
    expect(why(known, heightless(bare()))).toContain("is not known: the rows for unknown heights");
    expect(why(unknown)).toContain("is known: the rows for known heights");
  });

  it("up to a height of the blind and over it, the limit itself with the lower", () => {
    const low = [{ if: "blind-height-at-most", mm: 2500 }] as const;
    const high = [{ if: "blind-height-over", mm: 2500 }] as const;
    for (const [blindHeightMm, isLow] of [
      [2499, true],
      [2500, true],
      [2501, false],
    ] as const) {
      const geometry = bare({ blindHeightMm });
      expect(why(low, geometry)).toBe(isLow ? undefined : "Written for lower shades.");
      expect(why(high, geometry)).toBe(isLow ? "Written for higher shades." : undefined);
    }
  });

  it("of a loop that breaks away only", () => {
    const breaks = [{ if: "device-with-breakaway" }] as const;
    expect(why(breaks, looped(600, "breakaway"))).toBeUndefined();
    for (const geometry of [looped(600, "tensioner"), looped(600, "none"), bare()])
      expect(why(breaks, geometry)).toBe("No loop on this lift breaks away.");
  });

  it("only where every condition holds; none asks nothing", () => {
    expect(why(undefined)).toBeUndefined();
    expect(why([{ if: "installation-height-known" }, { if: "blind-height-over", mm: 1500 }])).toBe(
      "Written for higher shades.",
    );
  });
});

describe("a cleat that no cord is wound on", () => {
  /** Top 2400 mm above the floor; the cord comes out 50 mm below it. */
  const at = (cleatAboveFloorMm: number, over: object = {}) =>
    cleatAstray(hanging(300, { cleatAboveFloorMm, ...over }));

  it("lies at the lock or above it", () => {
    const low = { topAboveFloorMm: 1900 };
    const lowAt = (cleatAboveFloorMm: number, from: "lock" | "last eye" = "lock") =>
      cleatAstray({ ...hanging(300, { cleatAboveFloorMm, from }), ...low });
    expect(lowAt(1849)).toBeUndefined();
    expect(lowAt(1850)).toBe(
      "The cleat is planned above the lock that its cord comes out of, where no cord is wound",
    );
    expect(lowAt(1900, "last eye")).toBe(
      "The cleat is planned above the last eye that its cord comes over, where no cord is wound",
    );
  });

  it("or higher than both hands reach, 2 m, whether or not the window’s height is known", () => {
    expect(at(2000)).toBeUndefined();
    expect(at(2001)).toContain("higher than hands reach");
    expect(cleatAstray(heightless(hanging(300, { cleatAboveFloorMm: 2001 })))).toContain("hands reach");
  });

  it("is looked for at every cord that hangs", () => {
    const second = bare({ pulls: [pulls(300), pulls(300, { cleatAboveFloorMm: 2100 })] });
    expect(cleatAstray(second)).toContain("hands reach");
    expect(cleatAstray(bare())).toBeUndefined();
  });
});

describe("heights that were not said", () => {
  const { resolved: shade } = handShade({ job: { units: METRIC } });
  const asked = (geometry: CordGeometry) => judgeHeights({ shade }, geometry);
  const ids = (geometry: CordGeometry) => asked(geometry).map(({ id }) => id.replace("safety.", ""));
  const { footholdMm: _said, ...unsaid } = hanging(300);

  it("are asked where something hangs at the front, and of nothing that does not", () => {
    expect(ids(hanging(300))).toEqual([]);
    expect(ids(heightless(hanging(300)))).toEqual(["height-unknown"]);
    expect(ids(heightless(looped(600)))).toEqual(["height-unknown"]);
    expect(ids(unsaid)).toEqual(["foothold-unknown"]);
    expect(ids(heightless(unsaid))).toEqual(["height-unknown", "foothold-unknown"]);
    const { footholdMm: _none, ...cordless } = heightless(bare());
    expect(ids(cordless)).toEqual([]);
  });

  it("are asked in whole questions, of the field that answers them, and are not proven until then", () => {
    const [height, foothold] = asked(heightless(unsaid));
    for (const one of [height, foothold])
      expect(one).toMatchObject({ severity: "unproven", stage: "safety" });
    expect(height).toMatchObject({ path: "/rooms/0/windows/0/opening/sillAboveFloorMm", remedies: [] });
    expect(height?.text).toMatch(/^How high above the floor does the opening begin\? .*no rule on heights/);
    expect(foothold).toMatchObject({
      path: "/rooms/0/windows/0/opening/footholds",
      remedies: [{ label: "There is nothing to stand on", patch: [{ op: "add", value: [] }] }],
    });
    expect(foothold?.text).toMatch(
      /^Is there anything at this window that a child can stand on: .*highest\.$/,
    );
  });

  it("a lead is followed, and its height asked where some of it hangs free", () => {
    const motor = (over: Partial<CordGeometry>) => bare({ kind: "motor", ...over });
    expect(ids(motor({}))).toEqual(["lead-unknown"]);
    expect(ids(motor({ leadLooseMm: 0 }))).toEqual([]);
    expect(ids(motor({ leadLooseMm: 150 }))).toEqual(["lead-height-unknown"]);
    expect(ids(motor({ leadLooseMm: 150, leadLowMm: 900 }))).toEqual([]);
    expect(ids(bare({ kind: "spring", leadLooseMm: 150 }))).toEqual([]);
    const { footholdMm: _none, ...standing } = motor({ leadLooseMm: 150, leadLowMm: 900 });
    expect(ids(standing)).toEqual(["foothold-unknown"]);
    expect(ids(heightless(motor({ leadLooseMm: 150, leadLowMm: 900 })))).toEqual([]);
    const [lead] = asked(motor({ leadLooseMm: 150 }));
    expect(plain(lead?.text)).toContain("of the 150 mm of lead that hang free");
    expect(lead).toMatchObject({
      path: "/rooms/0/windows/0/shade/making/lift/leadLowMm",
      cause: { id: "safety.cords-lead" },
    });
    const [unknown] = asked(motor({}));
    expect(unknown?.path).toBe("/rooms/0/windows/0/shade/making/lift/leadLooseMm");
    for (const one of [lead, unknown])
      expect(one?.remedies.map(({ patch }) => patch.at(-1))).toEqual([
        { op: "add", path: "/rooms/0/windows/0/shade/making/lift/leadLooseMm", value: 0 },
      ]);
  });

  it("a cleat astray is a fault with both heights of the guides to press, 1600 and 1500 mm", () => {
    const [found] = asked(hanging(300, { cleatAboveFloorMm: 2100 }));
    expect(found).toMatchObject({ id: "safety.cleat-astray", severity: "fix" });
    expect(plain(found?.text)).toContain(
      "between the height that the rules ask for and 2000 mm, and below the lock.",
    );
    expect(found?.remedies.map(({ label }) => plain(label))).toEqual([
      "Fix the cleat 1600 mm above the floor",
      "Fix the cleat 1500 mm above the floor",
    ]);
    const eye = asked(hanging(300, { cleatAboveFloorMm: 2100, from: "last eye" }));
    expect(eye[0]?.text).toContain("and below the last eye.");
  });
});

describe("a lead beside a bed", () => {
  /** A guide below 1600 mm holds its cord, the Australian standard of 2014 asks: counted from what a child stands on. */
  const guide = rulesFor("au", "for-sale").active.find(({ rule }) => rule.id === "AU-GUIDE");
  const at = (leadLowMm: number, footholdMm: number) => {
    if (guide === undefined) throw new Error("invalid rules: AU-GUIDE is gone");
    const geometry = bare({ kind: "motor", leadLooseMm: 300, leadLowMm, footholdMm, footholdName: "bed" });
    const situation = { geometry, tag: { signalMm: 5, textMm: 3 } };
    const { outcome, measurement } = evaluate(guide.rule, situation, { purpose: "for-sale" }, guide.outside);
    return [outcome, measurement?.why.startsWith("Measured from the bed at the window") ?? false];
  };

  it.each([
    [1601, 0, "does-not-apply", false],
    [1600, 0, "failed", false],
    [1901, 300, "does-not-apply", false],
    [1900, 300, "not-proven", true],
    [1700, 300, "not-proven", true],
  ])("%d mm above the floor, %d mm high the bed: %s", (leadLowMm, footholdMm, outcome, isFromBed) => {
    expect(at(leadLowMm, footholdMm)).toEqual([outcome, isFromBed]);
  });
});

describe("why a number within its limit proves nothing", () => {
  /** 22 cm of cord within reach under 35 N: SOR/2019-97, s. 5. On a heavy shade the cord is bent aside, sin ε = 35 / (2 · 40). */
  const span = rulesFor("ca", "for-sale").active.find(({ rule }) => rule.id === "CA-SPAN");
  const why = (geometry: CordGeometry) => {
    if (span === undefined) throw new Error("invalid rules: CA-SPAN is gone");
    const situation = { geometry, tag: { signalMm: 5, textMm: 3 } };
    const evaluation = evaluate(span.rule, situation, { purpose: "for-sale" }, span.outside);
    return plain(new ResultWriter({ units: METRIC }, situation, undefined).result(span.rule, evaluation).why);
  };
  const heavy = { heldN: [80, 80], leastShare: 0.5 };

  it("tells how far a taut cord comes out, s / cos ε, and that the test decides", () => {
    const longer = 1 / Math.sqrt(1 - (35 / 80) ** 2);
    expect(198 * longer).toBeGreaterThan(220);
    expect(why(backed([150, 198], heavy))).toContain(
      `Under the pull a cord stretches and gives sideways, by calculation to ${Math.round(198 * longer)} mm. Only the test decides.`,
    );
    expect(why(backed([150, 190], heavy))).not.toContain("Only the test decides");
  });

  it("tells that a cord which slides feeds the loop", () => {
    expect(why(backed([150, 198]))).toContain("But the cord slides: a child’s pull makes the shade rise");
  });
});

describe("shades side by side", () => {
  /** X1: cords hang 31 in from the left of 36 in, up to 83.2 in of them. */
  const { resolved, size, lift } = handShade({ job: { units: METRIC } });
  const judge = (opening: object, over: object = {}) =>
    judgeNeighbours({
      shade: { ...resolved, opening: { ...resolved.opening, ...opening } },
      size,
      lift: { ...lift, ...over },
    });
  const beside = { shade: true, wallMm: 200, angleDeg: 180 };
  const acrossMm = (found: ReturnType<typeof judge>) =>
    Number(/(\d+) mm from the shade at its/.exec(plain(found[0]?.text))?.[1]);

  it("lie as far apart as the corner between them has it: 2 w sin(α/2), and round an outer corner 2 w", () => {
    // 5 in from the cords to the right edge.
    for (const [angleDeg, betweenMm] of [
      [90, 200 * Math.SQRT2],
      [60, 200],
      [180, 400],
      [270, 400],
    ] as const)
      expect(acrossMm(judge({ right: { ...beside, angleDeg } }))).toBe(Math.round(127 + betweenMm));
    expect(acrossMm(judge({ left: beside }))).toBe(Math.round(31 * 25.4 + 400));
  });

  it("are out of reach over twice the longest cord, whichever end of the travel that is", () => {
    const near = (wallMm: number, downMm: number, upMm: number) =>
      judge({ right: { ...beside, wallMm } }, { tailLoweredMm: downMm, tailRaisedMm: upMm }).length;
    // 127 + 2 · 100 mm between: cords of 163.5 mm just meet.
    expect([near(100, 100, 164), near(100, 164, 100), near(100, 163, 100)]).toEqual([1, 1, 0]);
  });

  it("say on which side cords hang, and offer the other or a spring", () => {
    const [right] = judge({ right: beside });
    expect(right).toMatchObject({ id: "safety.neighbour-cords", severity: "fix" });
    expect(plain(right?.text)).toContain("Its cords hang on the right, up to 2113 mm of them, 527 mm from");
    expect(right?.remedies.map(({ label }) => label)).toEqual([
      "Work it from the left",
      "Raise it by a spring",
    ]);
    const [left] = judge({ left: beside }, { controlSide: "left" });
    expect(left?.remedies[0]?.label).toBe("Work it from the right");
    expect(judge({ right: { ...beside, shade: false } })).toEqual([]);
  });

  it("cords of a top rail are kept apart by a board that they hang it from", () => {
    const seat = { xMm: 31 * 25.4 };
    const topRail = {
      ...{ side: "right", tailDownMm: 500, tailUpMm: 900, housingHeightMm: 24, dropMm: 300 },
      ...{ cords: [1, 2], eyes: [], seat },
    };
    const [found] = judge({ right: beside }, { kind: "spring", topRail });
    expect(plain(found?.text)).toContain("Its cords hang on the right, up to 900 mm of them, 527 mm from");
    expect(found?.remedies).toMatchObject([
      {
        label: "Hang it from the board",
        patch: [{ path: "/rooms/0/windows/0/shade/making/fold/topDropMm", value: 0 }],
      },
    ]);
  });

  it("worked together make one loop of both their cords and what lies between", () => {
    const [shared] = judge({ right: { ...beside, together: true } }, {});
    expect(shared).toMatchObject({
      id: "safety.shared-cords",
      severity: "fix",
      path: "/rooms/0/windows/0/opening/right/together",
    });
    expect(plain(shared?.text)).toContain(
      "of this shade alone up to 2113 mm, as much again of the other, and 400 mm between the openings.",
    );
    expect(shared?.remedies[0]?.patch).toEqual([
      { op: "remove", path: "/rooms/0/windows/0/opening/right/together" },
    ]);
    const [bareOnes] = judge({ left: { ...beside, together: true } }, { cords: [] });
    expect(bareOnes?.text).toContain(
      "the shade at its left. Cords that run on from one to the other are bare",
    );
    expect(judge({ right: { ...beside, shade: false, together: true } })).toEqual([]);
  });
});

describe("tests that hands, weights and laboratories do", () => {
  /** Forces and sizes as the rules of the places are reported to give them. */
  const NUMBERS: Partial<Record<(typeof PHYSICAL_TESTS)[number], string[]>> = {
    "pull-rear-cords": ["35 N (3.57 kg"],
    "pull-enclosure": ["35 N (3.57 kg", "a few hundred times"],
    "wind-on-cleat": ["200 mm", "35 N"],
    "guide-pull": ["70 N (7.14 kg", "for 10 s", "220 mm"],
    "breakaway-load": ["6 kg"],
    "rear-release": ["6 kg"],
    "collector-opens": ["6 kg"],
    "small-parts": ["90 N (9.18 kg", "31.7 mm"],
    "motor-lead": ["200 mm", "35 N"],
    lead: ["At most 90 mg in a kilogram"],
    "head-probe": ["EN 16433"],
    "reach-and-loop": ["ANSI/WCMA A100.1-2018"],
    "button-cells": ["button or coin cells"],
    "loop-device": ["takes a tool"],
    labels: ["current text of the rules"],
  };

  it.each([...PHYSICAL_TESTS])("%s has its numbers, in the maker’s units", (id) => {
    const { title, text, id: own } = physicalTest(id, METRIC);
    expect(own).toBe(id);
    expect(title.length).toBeGreaterThan(5);
    const said = plain(text);
    for (const number of NUMBERS[id] ?? ["missing"]) {
      const [force = "", mass] = number.split(" (");
      expect(said).toContain(mass === undefined ? number : force);
      if (mass !== undefined) {
        const newtons = Number.parseFloat(force);
        expect(said).toContain(`(${plain(massText(newtons / GRAVITY, METRIC))} on a luggage scale)`);
        expect(Math.abs(Number.parseFloat(mass) - newtons / 9.80665)).toBeLessThan(0.005);
      }
    }
    expect(new Set(PHYSICAL_TESTS.map((one) => physicalTest(one, INCHES).title)).size).toBe(
      PHYSICAL_TESTS.length,
    );
  });
});

describe("words of the review", () => {
  it("lengths as the rules give them, the maker’s inches first, fine ones with a tenth", () => {
    const text = (mm: number, units: typeof METRIC | typeof INCHES, decimals?: number) =>
      plain(mmText(mm, units, decimals));
    expect(text(220, METRIC)).toBe("220 mm");
    expect(text(220.4, METRIC)).toBe("220 mm");
    expect(text(220.44, METRIC, 2)).toBe("220.44 mm");
    expect(text(31.7, METRIC)).toBe("31.7 mm");
    expect(text(49.96, METRIC)).toBe("50 mm");
    expect(text(2.54, INCHES)).toBe("2.5 mm");
    // 203.2 mm are 8 in; less than 10 mm no ruler tells.
    expect(text(203.2, INCHES)).toBe("8 in (203 mm)");
    expect(text(10, INCHES)).toContain("in (10 mm)");
  });

  it("value and limit differ to the eye where they differ", () => {
    const check = { quantity: "cord-between-contacts", unit: "mm", comparison: "at-most", states: "all" };
    const told = (value: number | undefined, limit: number | undefined, over: object = {}) => {
      const { valueText, limitText } = valueAndLimit({ ...check, ...over } as never, value, limit, METRIC);
      return [valueText && plain(valueText), limitText && plain(limitText)];
    };
    expect(told(220.3, 220)).toEqual(["220.3 mm", "at most 220 mm"]);
    expect(told(221.3, 220)).toEqual(["221 mm", "at most 220 mm"]);
    expect(told(220, 220)).toEqual(["220 mm", "at most 220 mm"]);
    expect(told(undefined, 220, { comparison: "below" })).toEqual([undefined, "less than 220 mm"]);
    expect(told(5, undefined)).toEqual(["5 mm", undefined]);
    expect(told(1600, 1500, { comparison: "at-least" })[1]).toBe("at least 1500 mm");
    expect(told(1, 0, { comparison: "equals", unit: "yes-no" })).toEqual(["yes", "no"]);
    expect(told(3, 1, { comparison: "equals", unit: "count" })).toEqual(["3", "1"]);
    expect(told(90, 90, { unit: "mg/kg" })).toEqual(["90 mg/kg", "at most 90 mg/kg"]);
    expect(told(6, 6, { unit: "kg" })[0]).toMatch(/^6(\.0)? kg$/);
  });

  it("how far a shade is raised, and counts of outcomes", () => {
    expect([0, 0.254, 1].map((raise) => plain(raiseText(raise)))).toEqual([
      "fully lowered",
      "raised by 25 %",
      "fully raised",
    ]);
    expect(upperFirst("cord here")).toBe("Cord here");
    const told = (count: number, outcome: RuleOutcome) => plain(outcomeCountText(count, outcome));
    expect([told(1, "failed"), told(3, "failed")]).toEqual(["1 rule failed", "3 rules failed"]);
    expect([told(1, "does-not-apply"), told(2, "does-not-apply")]).toEqual([
      "1 does not apply",
      "2 do not apply",
    ]);
    expect([told(2, "not-proven"), told(2, "not-shown-to-fail")]).toEqual([
      "2 not proven",
      "2 not shown to fail",
    ]);
  });

  it("what a change comes to for the finding that it was offered by", () => {
    const review = {
      counts: { "not-proven": 4 },
      results: [{ ruleId: "CA-SPAN", outcome: "not-shown-to-fail" }],
    } as unknown as SafetyReview;
    const of = (id: string) => comesToText({ id } as never, review);
    expect(of("safety.not-proven")).toBe("Of these, 4 would stay open.");
    expect(of("safety.ca-span")).toBe("This rule: not shown to fail.");
    expect(of("safety.ca-loop")).toBeUndefined();
  });

  it("one cause for each place of cords, and a flame test for public buildings alone", () => {
    const places = ["front", "rail", "loop", "board", "back", "lead", "cleat"] as const;
    expect(places.map((place) => cordCause(place).id)).toEqual(
      places.map((place) => `safety.cords-${place}`),
    );
    expect(new Set(places.map((place) => cordCause(place).says)).size).toBe(places.length);
    for (const place of places) expect(cordCause(place).says).toMatch(/^[A-Z].{20,}\.$/);
    const { resolved: shade } = handShade();
    expect(judgeFire({ shade })).toEqual([]);
    const [found] = judgeFire({ shade: { ...shade, purpose: "public-building" } });
    expect(found).toMatchObject({
      id: "safety.flame-test",
      severity: "unproven",
      path: "/rooms/0/windows/0/shade/face",
    });
  });
});

it("a shade without cords has none of all that to judge", () => {
  expect(judgeHeights({ shade: handShade().resolved }, backed([200]))).toEqual([]);
});
