import { describe, expect, it } from "vitest";
import { handShade, NO_PARTS } from "../../test/hand-shade.ts";
import { expectNear } from "../../test/near.ts";
import { CATALOGUE, type Cord } from "../job/index.ts";
import type { CordRun } from "../shade-plan/index.ts";
import { cordTotal, handPullOfCords } from "./cord-sum.ts";
import { judgeLevel } from "./course/judge-level.ts";
import { pulleysN, pullShares } from "./course/pull-shares.ts";
import { gapAround, gapsToTry, hasRoom, shortOfMm } from "./gaps.ts";
import { hardPull, PULL_LIMITS_N } from "./hard-pull.ts";
import { judgeExamples } from "./judge-examples.ts";
import { judgePull, lighterBars, unsureShares } from "./judge-pull.ts";
import { judgeRear } from "./judge-rear.ts";
import { judgeCordStrength, neededStrengthN } from "./judge-strength.ts";
import type { LiftShade, LockInput } from "./lift-input.ts";
import { judgeHold } from "./lock/judge-hold.ts";
import { boardRemedy, insetRemedy } from "./make-room.ts";
import { riseOf } from "./rise-of.ts";
import { shortSpool } from "./short-spool.ts";
import { wovenSleeves } from "./woven-sleeves.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");
const { resolved, size, grid } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
const shadeWith = (over: object = {}): LiftShade => ({ ...resolved, ...over });
const ofCords = (cords: object[]) => cords as CordRun[];

describe("how hard a hand may pull", () => {
  /**
   * 5 lbf with one hand: 2010 ADA Standards, 309.4. 44 N for one arm, down, and over 70 % of that to be avoided:
   * EN 1005-3:2002, table 1 and annex.
   */
  it("rises by three published limits", () => {
    expect(PULL_LIMITS_N.map((one) => Math.round(one * 100) / 100)).toEqual([22.24, 30.8, 44]);
  });

  const words = { path: "/p", figures: [], remedies: [], takes: "It takes.", eases: "Ease it." };
  const of = (pullN: number, over: object = {}) => hardPull(shadeWith(over), pullN, words);

  it.each([
    [22.2, undefined, ""],
    [22.3, "note", "A pull up to 22.2 N is easy for one hand."],
    [30.79, "note", "A pull up to 22.2 N is easy for one hand."],
    [30.81, "note", "More than 30.8 N is to be avoided, 70 % of what nearly everyone can pull with one arm."],
    [44, "note", "More than 30.8 N is to be avoided, 70 % of what nearly everyone can pull with one arm."],
    [44.1, "fix", "Nearly everyone can pull 44 N with one arm, not everyone more."],
  ])("%d N: %s", (pullN, severity, says) => {
    const [found] = of(pullN);
    expect(found?.severity).toBe(severity);
    if (severity !== undefined) expect(plain(found?.text)).toBe(`It takes. ${says} Ease it.`);
    const [inPublic] = of(pullN, { purpose: "public-building" });
    expect(inPublic?.severity).toBe(severity && "fix");
  });

  it("is a finding of the lift unless something else is pulled", () => {
    expect(of(30)[0]).toMatchObject({ stage: "lift", id: "lift.hard-pull", path: "/p" });
    const rail = hardPull(shadeWith(), 30, { ...words, of: { stage: "rig", id: "rig.rail-pull" } });
    expect(rail[0]).toMatchObject({ stage: "rig", id: "rig.rail-pull" });
  });

  const course = { heights: [], shares: [] };
  const pulled = (withPulleysN: number | undefined, takeUp: "lock" | "cleat" = "lock") =>
    judgePull(shadeWith({ parts: CATALOGUE }), {
      ...{ pullN: 50, heldN: 30, takeUp },
      course: { ...course, ...(withPulleysN === undefined ? {} : { withPulleysN }) },
    })[0];

  it("tells weight and pull, and offers a pulley only where it eases the pull", () => {
    expect(plain(pulled(40)?.text)).toContain(
      "Raising it takes a pull of about 50 N for a weight of 30 N: the eyes and the lock add the rest.",
    );
    expect(plain(pulled(40, "cleat")?.text)).toContain("weight of 30 N: the eyes add the rest.");
    const offered = (mm: number | undefined) =>
      pulled(mm)?.remedies.filter(({ label }) => label.includes("in place of the eyes")) ?? [];
    expect(offered(40)).toHaveLength(1);
    expect(plain(offered(40)[0]?.changes)).toBe("The pull then comes to about 40 N.");
    expect([offered(50).length, offered(undefined).length]).toEqual([0, 0]);
  });

  it("a lighter bar is of a lighter material, at most 1.4 times as large in section", () => {
    const bar = (id: string, material: string, widthMm: number) =>
      ({ id, name: id, material, widthMm, thicknessMm: 3, stockMm: 2000 }) as never;
    const offered = (bars: never[], now = bar("now", "aluminium", 20)) =>
      lighterBars(shadeWith({ bar: now, parts: { ...CATALOGUE, bars } })).map(({ label }) => label);
    expect(offered([bar("wood-28", "wood", 28), bar("wood-29", "wood", 29)])).toEqual([
      "Use the lighter “wood-28”",
    ]);
    expect(offered([bar("steel", "steel", 10), bar("same", "aluminium", 10)])).toEqual([]);
    expect(offered(["a", "b", "c"].map((id) => bar(id, "plastic", 20)))).toHaveLength(2);
    expect(lighterBars(shadeWith({ parts: NO_PARTS }))).toEqual([]);
  });
});

describe("which of two shares the heaviest cord carries", () => {
  const judge = (stiffN: number[], limpN: number[]) =>
    unsureShares(shadeWith(), {
      ...{ stiffN, limpN },
      designN: stiffN.map((one, i) => Math.max(one, limpN[i] ?? 0)),
    } as never);

  it("is told where they differ by more than a tenth of the larger", () => {
    expect(judge([3, 10, 3], [4, 9, 4]).findings).toEqual([]);
    const { findings, workings } = judge([3, 8.9, 3], [4, 10, 4]);
    expect(workings[0]?.value).toBe(10);
    expect(findings[0]).toMatchObject({ id: "lift.shares-differ", severity: "note" });
    expect(plain(findings[0]?.text)).toContain(
      "Cord 2 carries 8.9 N if the bar is stiff and 10 N if the hem is",
    );
  });
});

describe("what nobody sells is named", () => {
  const own = { id: "mine", name: "My cord", diameterMm: 1.4 };
  const demo = (name: string) => ({ id: name, name, demo: true });
  const used = {
    cord: demo("cord"),
    ring: demo("ring"),
    eye: demo("eye"),
    turnEye: demo("turn"),
    tube: demo("tube"),
  };
  const text = (parts: object, takeUp: "lock" | "cleat" | "tube", over: object = {}) =>
    judgeExamples(shadeWith({ ...used, parts: { ...CATALOGUE, ...parts }, ...over }), { takeUp })[0]?.text;

  it("to who has parts in hand, by what the lift uses of them", () => {
    const mine = { cords: [own] };
    const ending = "are invented for demonstration. Enter those in your hand.";
    expect(text(mine, "lock")).toBe(`“cord”, “ring” and “eye” ${ending}`);
    expect(text(mine, "cleat")).toBe(`“cord”, “ring”, “eye” and “turn” ${ending}`);
    expect(text(mine, "tube")).toBe(`“cord”, “ring” and “tube” ${ending}`);
    expect(text({}, "lock")).toBeUndefined();
    expect(text(mine, "lock", { parts: NO_PARTS })).toBeUndefined();
    const named = { cord: own, ring: { ...used.ring, demo: false }, eye: demo("eye") };
    expect(text(mine, "lock", named)).toBe("“eye” is invented for demonstration. Enter those in your hand.");
    expect(text(mine, "lock", { ...named, eye: own })).toBeUndefined();
  });

  it("and the maker’s own of which too little is known", () => {
    const half = (kind: string) => ({ halfKnown: [{ kind, name: "My half cord" }] });
    expect(text(half("cords"), "lock")).toContain(
      "Too little is known of “My half cord”, your own: measure what is missing, and it is planned with.",
    );
    expect(text(half("tubes"), "lock")).toContain("Enter those in your hand.");
    expect(text(half("cloths"), "lock")).toBeUndefined();
  });
});

describe("a cord that is strong enough", () => {
  /** The knot leaves half, so that it decides where the running pull is less than twice the load. */
  it("breaks at five times what it carries, running and at its knot", () => {
    expect(neededStrengthN({ loadN: 10, runningN: 15 })).toBe(100);
    expect(neededStrengthN({ loadN: 10, runningN: 25 })).toBe(125);
  });

  const judge = (breakingN: number | undefined, loadN = 10, pullN = 15) =>
    judgeCordStrength(
      shadeWith({ cord: { ...resolved.cord, name: "My cord", breakingN }, parts: CATALOGUE }),
      ofCords([
        { loadN: 1, pullN: 1 },
        { loadN, pullN },
      ]),
      ({ id }) => id !== "cord-1-4",
    );

  it("fails below, with what it comes to and the stronger ones that go there", () => {
    expect(judge(100).findings).toEqual([]);
    const { findings, workings } = judge(99);
    expect(workings.map(({ value }) => value)).toEqual([99 / 15, 4.95]);
    expect(findings[0]).toMatchObject({ id: "lift.cord-too-weak", severity: "stop" });
    expect(plain(findings[0]?.text)).toBe(
      "“My cord” breaks at only 4.9 times what it carries; 5 times is asked for: 100 N.",
    );
    const stronger = CATALOGUE.cords.filter(({ id, breakingN = 0 }) => id !== "cord-1-4" && breakingN >= 100);
    expect(findings[0]?.remedies).toHaveLength(Math.min(2, stronger.length));
    expect(judge(124, 10, 25).findings).toHaveLength(1);
    expect(judge(125, 10, 25).findings).toEqual([]);
  });

  it("is not proven where its strength is not given, and not asked of one that carries nothing", () => {
    const { findings } = judge(undefined);
    expect(findings[0]).toMatchObject({ id: "lift.strength-unknown", severity: "unproven" });
    expect(plain(findings[0]?.text)).toContain("up to 15 N where it runs and 10 N at its knot");
    expect(plain(findings[0]?.text)).toContain("breaks above 100 N.");
    const { findings: none, workings } = judgeCordStrength(
      shadeWith({ cord: { ...resolved.cord, breakingN: 1 } }),
      ofCords([{ loadN: 0, pullN: 0 }]),
      () => true,
    );
    expect([none, workings]).toEqual([[], []]);
  });
});

describe("a lock that holds", () => {
  const judge = (readingsN: number[] | undefined, cordDiameterMm = 1.4, cordsMax?: number) =>
    judgeHold(
      {
        shade: shadeWith({ cord: { ...resolved.cord, diameterMm: 1.4 } }),
        liftParts: {
          lock: {
            name: "Mine",
            ...(cordsMax === undefined ? {} : { cordsMax }),
            ...(readingsN === undefined ? {} : { tests: { hold: { readingsN, cordDiameterMm } } }),
          },
        },
      } as unknown as LockInput,
      [3, 10, 4],
    );
  const said = (...given: Parameters<typeof judge>) => {
    const [found] = judge(...given).findings;
    return found && [found.id, found.severity];
  };

  it("holds twice the heaviest load at the least of its readings", () => {
    expect(said([25, 20, 30])).toBeUndefined();
    expect(said([25, 19.9, 30])).toEqual(["lift.hold-short", "fix"]);
    expect(said([25, 10, 30])).toEqual(["lift.hold-short", "fix"]);
    expect(said([25, 9.9, 30])).toEqual(["lift.hold-short", "stop"]);
    expect(judge([25, 20, 30]).workings.map(({ value }) => value)).toEqual([20]);
    expect(plain(judge([15]).findings[0]?.text)).toContain(
      "slipped in “Mine” at 15 N; the heaviest cord of this shade carries 10 N, and twice that, 20 N, is asked for.",
    );
  });

  it("a test with another cord says nothing: more than a tenth off", () => {
    expect(said([25], 1.53)).toBeUndefined();
    expect(said([25], 1.55)).toEqual(["lift.hold-other-cord", "unproven"]);
    expect(said([25], 1.25)).toEqual(["lift.hold-other-cord", "unproven"]);
  });

  it("is asked to be tested where nobody states what it takes, else taken by what is stated", () => {
    expect(said(undefined)).toEqual(["lift.hold-untested", "unproven"]);
    expect(plain(judge(undefined).findings[0]?.text)).toContain("must be 20 N or more");
    expect(said(undefined, 1.4, 6)).toBeUndefined();
    expect(said([9], 1.4, 6)).toEqual(["lift.hold-short", "stop"]);
  });
});

describe("a hem out of level by the stretch of its cords", () => {
  /** EA = 450 N / 0.12 = 3750 N; twice as far out of level asks for twice as stiff a cord. */
  const cord: Cord = { ...resolved.cord, id: "now", breakingN: 450 };
  const cords = [500, 900, 1000, 1100].map((breakingN) => ({
    ...{ id: `b${breakingN}`, name: `b${breakingN}`, diameterMm: 1.4, breakingN },
  }));
  const judge = (levelMm: number | undefined, takes: (one: Cord) => boolean = () => true) =>
    judgeLevel(
      shadeWith({ cord, parts: { ...CATALOGUE, cords } }),
      { heights: [], shares: [], ...(levelMm === undefined ? {} : { levelMm }) },
      takes,
    );

  it("shows from 3 mm on", () => {
    expect([judge(undefined), judge(3)]).toEqual([[], []]);
    const [found] = judge(6);
    expect(found).toMatchObject({ id: "lift.stretch-out-of-level", severity: "note" });
    expect(plain(found?.text)).toContain("up to 6 mm out of level");
    expect(found?.remedies.map(({ label }) => label)).toEqual(["Use “b900”", "Use “b1000”"]);
    expect(judge(6, ({ id }) => id !== "b900")[0]?.remedies.map(({ label }) => label)).toEqual([
      "Use “b1000”",
      "Use “b1100”",
    ]);
  });
});

describe("room along the board", () => {
  const line = {
    eyesMm: [100, 400, 700],
    boardFromMm: 0,
    boardToMm: 900,
    eyeRadiusMm: 6,
    straightRunMm: 25,
    housingLengthMm: 40,
  };

  it("between two eyes: half a housing, a run of straight cord and half an eye from each", () => {
    const [between, outside] = gapsToTry(line, "auto");
    expect(between).toEqual({ outer: 1, kind: "between", fromMm: 151, toMm: 349 });
    // 3 mm of board are kept beyond the housing.
    expect(outside).toEqual({ outer: 0, kind: "outside", fromMm: 23, toMm: 49 });
    expect(gapAround(line, 500)).toEqual({ outer: 2, kind: "between", fromMm: 451, toMm: 649 });
    expect(gapAround(line, 800)).toEqual({ outer: 3, kind: "outside", fromMm: 751, toMm: 877 });
    expect(gapAround(line, 100).outer).toBe(0);
    expect(gapsToTry(line, "outside").map(({ outer }) => outer)).toEqual([0]);
    expect(gapsToTry(line, "between").map(({ outer }) => outer)).toEqual([1]);
    expect(gapsToTry({ ...line, eyesMm: [100] }, "between").map(({ outer }) => outer)).toEqual([0]);
  });

  it("is short by what its ends overlap", () => {
    const gap = { outer: 1, kind: "between", fromMm: 200, toMm: 190 } as const;
    expect([shortOfMm(gap), shortOfMm({ ...gap, toMm: 210 })]).toEqual([10, 0]);
    expect([hasRoom(gap), hasRoom({ ...gap, toMm: 200 })]).toEqual([false, true]);
  });

  it("is made by columns within the outer quarters, or a longer board", () => {
    expect(insetRemedy(shadeWith(), 226, 900)).toEqual([]);
    expect(plain(insetRemedy(shadeWith(), 225, 900)[0]?.label)).toBe("Set the edge columns in by 225 mm");
    const board = (...given: [number, number]) => boardRemedy(shadeWith(), ...given);
    expect([board(-1, 6), board(6, 6)]).toEqual([[], []]);
    expect(board(0, 6)[0]?.label).toBe("Make the board as long as the shade is wide");
    expect(plain(board(5, 6)[0]?.label)).toBe("Make the board only 5 mm shorter than the shade");
    expect(board(5, 6)[0]?.patch.at(-1)?.path).toBe("/rooms/0/windows/0/shade/making/mount/boardShorterMm");
  });
});

describe("cord, sleeve and spool", () => {
  const level = { finishedWidthMm: 1000, finishedLengthMm: 1500 };

  it("rises from the bottom ring to the top line, the whole length without rows", () => {
    const row = { number: 1, fromHemMm: 100, yMm: 1400 };
    const at = (...given: Parameters<typeof riseOf>) => riseOf(...given);
    expect(at(row, level as never, 300)).toBe(1400);
    expect(at(undefined, level as never, 300)).toBe(1500);
    expect(at({ ...row, fromHemMm: 1600 }, level as never, 300)).toBe(0);
    // A row whose right end lies 40 mm lower: 20 below its middle there, and 20 above it at the left.
    const ends = { leftFromHemMm: 120, rightFromHemMm: 80, fallMm: 40 };
    expect([0, 500, 1000].map((xMm) => at({ ...row, ends }, level as never, xMm))).toEqual([
      1380, 1400, 1420,
    ]);
  });

  it("a woven sleeve runs from the bottom ring to the board, an inch turned in at either end", () => {
    const shade = shadeWith({ rearCords: "ring-locked" });
    const { values } = wovenSleeves({ shade, size, grid });
    // 60 − 3.8 in, less 19.05 mm of board, and 2 in more: raised to the next millimetre.
    const byHand = (60 - 3.8 + 2) * 25.4 - shade.board.thicknessMm;
    expect(values.wovenSleeves).toEqual({
      count: 5,
      cutMm: Math.ceil(byHand),
      totalMm: 5 * Math.ceil(byHand),
    });
    expect(wovenSleeves({ shade: shadeWith({ rearCords: "open" }), size, grid }).values).toEqual({});
    expect(wovenSleeves({ shade, size, grid: { ...grid, columns: [] } }).values).toEqual({});
    const short = wovenSleeves({ shade, size: { ...size, finishedLengthMm: 50 }, grid }).workings[0];
    expectNear(short?.value ?? 0, 50.8, 1e-9);
  });

  it("is never joined: the longest against what a spool holds", () => {
    const judge = (spoolMm: number | undefined) =>
      shortSpool(shadeWith({ cord: { ...resolved.cord, spoolMm } }), {
        cords: ofCords([{ cutMm: 900 }, { cutMm: 5000 }, { cutMm: 1200 }]),
      } as never);
    expect([judge(undefined), judge(5000)]).toEqual([[], []]);
    expect(judge(4999)[0]).toMatchObject({ id: "rig.short-spool", severity: "stop" });
    expect(plain(judge(4999)[0]?.text)).toContain("The longest cord is 5000 mm");
  });

  it("is summed cord by cord, under the numbers that cords have", () => {
    const total = cordTotal([
      { number: 1, cutMm: 100 },
      { number: 3, cutMm: 250 },
    ]);
    expect(total.value).toBe(350);
    const pull = handPullOfCords([
      [2, 3],
      [5, 4.5],
    ]);
    expect(pull.value).toBe(7.5);
  });
});

describe("closed cords up the back", () => {
  const judge = (rearCords: string, takeUp: string, rows = grid.rows) =>
    judgeRear({
      shade: shadeWith({ rearCords }),
      grid: { ...grid, rows },
      liftParts: { takeUp },
    } as never);
  const ids = (...given: Parameters<typeof judge>) => judge(...given).map(({ id }) => id);

  it("say where they stay bare, and that their friction is not in the pull", () => {
    expect(ids("open", "lock")).toEqual([]);
    expect(ids("enclosed", "lock")).toEqual(["rig.bare-cord", "lift.sleeve-friction"]);
    expect(ids("ring-locked", "tube")).toEqual([
      "rig.gripped-sleeve",
      "rig.bare-cord",
      "lift.sleeve-friction",
    ]);
    const bare = (takeUp: string) => judge("enclosed", takeUp)[0]?.text;
    expect(bare("lock")).toContain("bare along the board between the eyes and the lock, and below the lock.");
    expect(bare("cleat")).toContain("from the last one down to the cleat.");
    expect(bare("tube")).toContain("bare for the last stretch up to its spool.");
    const gripped = (count: number) =>
      plain(judge("ring-locked", "lock", grid.rows.slice(0, count))[0]?.text);
    expect(gripped(7)).toContain("of its 7 folds only the cloth above the top ring, 269 mm, would ever fold");
    expect(gripped(1)).toContain("of its 1 fold only");
  });
});

describe("where the pull comes from", () => {
  /** Cords turn a quarter over their own eye, T e^(μπ/2), and the lock’s roller passes on 0.917 of it. */
  const MU = 0.25;
  const eye = { ...resolved.eye, friction: MU, pulleyShare: undefined } as unknown as typeof resolved.eye;
  const quarter = Math.exp((MU * Math.PI) / 2);
  const after = Math.exp(MU * 0.1);
  const cords = ofCords([
    { number: 1, loadN: 10, pullN: (10 * quarter * after) / 0.917, eyes: [1, 2] },
    { number: 2, loadN: 6, pullN: (6 * quarter) / 0.917, eyes: [2] },
  ]);
  const turns = new Map([
    [1, { ownEyeRad: Math.PI / 2, afterRad: 0.1 }],
    [2, { ownEyeRad: Math.PI / 2, afterRad: 0 }],
  ]);

  it("weight, own eyes, the last eye that they pass, and the roller, which add up to the pull", () => {
    const shares = pullShares(eye, cords, turns);
    expect(shares.map(({ what, eye: at }) => [what, at])).toEqual([
      ["weight", undefined],
      ["own-eye", 1],
      ["own-eye", 2],
      ["passed-eye", 2],
      ["roller", undefined],
    ]);
    const [weight, first, second, passed, roller] = shares.map(({ addsN }) => addsN);
    expect(weight).toBe(16);
    expectNear(first ?? 0, 10 * (quarter - 1), 1e-9);
    expectNear(second ?? 0, 6 * (quarter - 1), 1e-9);
    expectNear(passed ?? 0, 10 * quarter * (after - 1), 1e-9);
    const pull = cords.reduce((sum, { pullN }) => sum + pullN, 0);
    expectNear(roller ?? 0, pull * (1 - 0.917), 1e-9);
    expectNear(
      shares.reduce((sum, { addsN }) => sum + addsN, 0),
      pull,
      1e-9,
    );
    // A cord whose turns nobody gave turns a quarter.
    expectNear(pullShares(eye, cords, new Map())[1]?.addsN ?? 0, 10 * (quarter - 1), 1e-9);
  });

  it("a pulley passes on 0.89 in place of the eye’s turn, but for the eye before the lock", () => {
    const kept = (6 * quarter) / 0.917;
    const changed = (10 * after) / 0.917 / 0.89;
    expectNear(pulleysN(eye, cords, turns).value, kept + changed, 1e-9);
  });
});
