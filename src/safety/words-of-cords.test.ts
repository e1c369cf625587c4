import { describe, expect, it } from "vitest";
import { type HandShade, handShade } from "../../test/hand-shade.ts";
import { jobWith } from "../../test/job-with.ts";
import { LIFT_KINDS, type LiftKind, type Purpose } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import type { Lift } from "../shade-plan/index.ts";
import { lengthText } from "../units/index.ts";
import { backText, frontText } from "./hanging-cords.ts";
import { askPlace, jobStamp, judgeRoomCords, planCautions, proposedLift } from "./index.ts";
import { judgeCords } from "./judge-cords.ts";

const METRIC = { system: "metric", ruler: "1 mm" } as const;
const plain = (text: string) => text.replaceAll("\u00a0", " ");

function planned(kind: LiftKind, lift: object = {}, opening: object = { sillAboveFloorMm: 900 }) {
  const job = jobWith(
    {
      opening: { widthsMm: [900], heightsMm: [1500], ...opening },
      shade: { mount: "to-size", making: { lift: { kind, rearCords: "open", ...lift } } },
    },
    { units: METRIC },
  );
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("invalid test job: empty");
  const said = plain(shade.cautions.find(({ id }) => id === "cords-of-this-shade")?.text ?? "");
  const ids = shade.cautions.map(({ id }) => id);
  return { shade, lift: shade.lift, said, ids, reviewIds: shade.safety.cautions.map(({ id }) => id) };
}

/** X1 written down by hand, in millimetres. */
function hand(made: HandShade = {}, lift: Partial<Lift> = {}) {
  const shade = handShade({ ...made, job: { units: METRIC, ...made.job } });
  return { ...shade, shade: shade.resolved, lift: { ...shade.lift, ...lift } as Lift };
}

describe("what hangs at the front is said with its own lengths", () => {
  it("cords over a lock: X1’s tails of 30 in and 83.2 in, 90 in less board 19 and lock 24 mm above the floor", () => {
    expect(plain(frontText(hand()))).toBe(
      "5 lift cords hang 762 mm below the lock with the shade lowered and 2113 mm with it raised. They end 1481 mm above the floor when it is lowered and 130 mm above the floor when it is raised.",
    );
  });

  it("a note of the shade says the same, and what to choose where children are", () => {
    const [found] = judgeCords(hand());
    expect(found).toMatchObject({
      id: "safety.free-hanging-cord",
      severity: "note",
      stage: "safety",
      path: "/rooms/0/windows/0/shade",
      cite: { source: "cordless-advice" },
      cause: { id: "safety.cords-front" },
      remedies: [],
    });
    expect(found?.text).toBe(
      `${frontText(hand())} Where children live or visit, choose a shade without cords that can be reached.`,
    );
    expect(judgeCords({ ...hand(), lift: { kind: "spring" } as unknown as Lift })).toEqual([]);
  });

  it("one cord is one, and one that reaches the floor lies on it", () => {
    const { cords } = handShade().lift;
    const one = hand({}, { cords: cords.slice(0, 1), tailRaisedMm: 2300 } as Partial<Lift>);
    expect(plain(frontText(one))).toBe(
      "One lift cord hangs 762 mm below the lock with the shade lowered and 2300 mm with it raised. They end 1481 mm above the floor when it is lowered and lying on the floor when it is raised.",
    );
  });

  it("at the very floor it lies on it, a hair above it does not", () => {
    const made = hand();
    const lockMm = (made.size.topAboveFloorMm ?? 0) - made.shade.board.thicknessMm - 24;
    const raisedTo = (tailRaisedMm: number) => frontText(hand({}, { tailRaisedMm } as Partial<Lift>));
    expect(raisedTo(lockMm)).toContain("lying on the floor when it is raised");
    expect(raisedTo(lockMm - 2)).not.toContain("lying on the floor");
  });

  it("cords of a top that comes down, beside a lift without any", () => {
    const topRail = {
      side: "left",
      tailDownMm: 800,
      tailUpMm: 500,
      housingHeightMm: 24,
      cords: [1, 2],
      seat: { xMm: 100 },
    };
    const { size, shade } = hand();
    const railed = { ...hand(), lift: { kind: "spring", topRail } as unknown as Lift };
    const lockMm = (size.topAboveFloorMm ?? 0) - shade.board.thicknessMm - 24;
    expect(plain(frontText(railed))).toBe(
      `2 cords hang from the top rail’s own lock at the left end, 800 mm below it with the top let down and 500 mm with it up. They end ${Math.round(lockMm - 800)} mm above the floor when the top is down and ${Math.round(lockMm - 500)} mm above the floor when it is up. No other cord hangs at the front: the shade is raised and lowered by hand at its hem.`,
    );
    const single = {
      ...railed,
      lift: { kind: "spring", topRail: { ...topRail, cords: [1] } } as unknown as Lift,
    };
    expect(frontText(single)).toContain("One cord hangs from the top rail’s own lock at the left end,");
    const [finding] = judgeCords(railed);
    expect(finding).toMatchObject({ severity: "note", cause: { id: "safety.cords-rail" } });
  });

  it("a spring, a motor: no cord, and what a motor has instead", () => {
    expect(planned("spring").said).toContain(
      "No cord hangs at the front: the shade is raised and lowered by hand at its hem. Up the back",
    );
    expect(planned("motor").said).toContain(
      "No cord hangs at the front: a motor raises and lowers the shade. Its lead, and that of its charger, is a cord as well: clip all of it out of reach.",
    );
  });

  it("a wand with its length, which may come off", () => {
    const { lift, said } = planned("tube-wand");
    if (lift.kind !== "tube-wand") throw new Error("invalid test job");
    const wand = `No cord hangs at the front, but a wand of ${plain(lengthText(lift.wandMm, METRIC))}`;
    expect(said).toContain(wand);
    const off = plain(frontText({ ...hand(), lift: { ...lift, detachable: true } }));
    expect(off).toBe(`${wand}, which comes off and is kept elsewhere.`);
    expect(plain(frontText({ ...hand(), lift: { ...lift, detachable: false } }))).toBe(`${wand}.`);
  });

  it("a loop with its drop, its end and its tensioner, and a connector where it has one", () => {
    const { lift, said } = planned("tube-loop");
    if (lift.kind !== "tube-loop") throw new Error("invalid test job");
    const drop = plain(lengthText(lift.loopDropMm, METRIC));
    const end = plain(lengthText(lift.loopEndAboveFloorMm ?? Number.NaN, METRIC));
    expect(said).toContain(
      `One loop hangs at the front, ${drop} down to a tensioner that is fixed to the wall. It ends ${end} above the floor, at every height of the shade. Without its tensioner a loop can strangle a child.`,
    );
    const unknown = planned("tube-loop", {}, {}).said;
    expect(unknown).toContain(
      "How far above the floor it ends is not known, since the sill’s height was not measured. Without",
    );
    expect(planned("tube-loop", { loopJoint: "breakaway" }).said).toContain(
      "A connector in it comes apart under a pull. Without its tensioner",
    );
  });
});

describe("how cords run up the back", () => {
  const back = (rearCords: Lift["rearCords"], kind: LiftKind = "cord-lock") =>
    plain(
      backText(
        hand({}, { kind, rearCords, takeUp: kind === "cord-lock" ? "lock" : "tube" } as Partial<Lift>),
      ),
    );

  it("bare, gripped by the rings, or sewn in, 7.6 in apart", () => {
    expect(back("open")).toBe("Up the back they run through rings 193 mm apart.");
    expect(back("ring-locked")).toBe(
      "Up the back they run through rings 193 mm apart, each cord in a woven sleeve that the rings grip.",
    );
    expect(back("enclosed", "spring")).toBe(
      "Up the back the cords run through rings 193 mm apart, under sleeves that are sewn down along both edges.",
    );
  });

  it("through the widest of the spacings, or one ring alone", () => {
    const made = hand();
    const spaced = (spacingsMm: number[]) => plain(backText({ ...made, grid: { ...made.grid, spacingsMm } }));
    expect(spaced([150, 260, 200])).toBe("Up the back they run through rings 260 mm apart.");
    expect(spaced([])).toBe("Up the back each cord runs through one ring.");
  });
});

describe("cautions by what there is", () => {
  const ids = (made: HandShade, lift: Partial<Lift> = {}, weighted = false) => {
    const input = hand(made, lift);
    const form = weighted
      ? { ...input.form, haberdashery: [{ id: "shot-bags" }] as typeof input.form.haberdashery }
      : input.form;
    return planCautions({ ...input, form }).map(({ id }) => id);
  };
  const usual = ["children-and-cords", "cords-of-this-shade", "cords-behind", "never-knot-together"];
  const last = ["ladder-and-drill", "board-can-fall", "defer"];

  it("stand in one order, the cleat only where cords hang", () => {
    expect(ids({})).toEqual([...usual, "furniture-away", "cleat", "rules-of-the-place", "fire", ...last]);
    for (const kind of LIFT_KINDS) {
      const { ids, reviewIds } = planned(kind);
      const isWound = kind === "cord-lock" || kind === "cleat";
      expect([ids.includes("cleat"), reviewIds.includes("cleat")], kind).toEqual([isWound, isWound]);
    }
  });

  it("add weights in the hem, a public building’s flame tests and a motor’s button cells", () => {
    expect(ids({}, {}, true)).toContain("weights");
    expect(ids({})).not.toContain("weights");
    const inPublic = (purpose: Purpose) => ids({ job: { place: "gb", purpose } }).includes("flame-tests");
    expect([inPublic("public-building"), inPublic("for-sale")]).toEqual([true, false]);
    expect(planned("motor").ids).toEqual(expect.arrayContaining(["button-cells", "button-cell-rules"]));
    expect(planned("spring").ids).not.toContain("button-cells");
  });

  it("tell the distance to heaters as it is spoken: 3 ft or 1 m", () => {
    const fire = (made: HandShade) =>
      plain(planCautions(hand(made)).find(({ id }) => id === "fire")?.text ?? "");
    expect(fire({})).toContain("at least 1 m from heaters");
    expect(fire({ job: { units: { system: "imperial", ruler: "1/8 in" } } })).toContain("at least 3 ft from");
  });

  it("say whose rules were not read, and that free cords are restricted only where they hang", () => {
    const rules = (made: HandShade, lift: Partial<Lift> = {}) =>
      planCautions(hand(made, lift)).find(({ id }) => id === "rules-of-the-place")?.text ?? "";
    const free = "A free-hanging pull cord is widely restricted for goods that are sold or given away.";
    expect(rules({})).toBe(
      `The cords of this shade have not been reviewed against the rules of any place. ${free} Read the rules in force before you sell, give or install.`,
    );
    expect(rules({ job: { place: "elsewhere" } })).toContain("the rules of any place");
    expect(rules({ job: { place: "us" } })).toContain("against the rules of the United States.");
    expect(rules({ job: { place: "ca" } })).toContain("against the rules of Canada.");
    expect(rules({}, { kind: "spring" } as Partial<Lift>)).not.toContain(free);
  });
});

describe("cords at several windows of one room", () => {
  const shadeOf = (windowName: string, downMm: number, upMm: number, opening: object = {}) => {
    const { lift } = handShade();
    return { windowName, opening, lift: { ...lift, tailLoweredMm: downMm, tailRaisedMm: upMm } };
  };
  const judge = (shades: Parameters<typeof judgeRoomCords>[0]["shades"]) =>
    judgeRoomCords({ name: "Hall", path: "/rooms/2", units: METRIC, shades });

  it("reach each other over the two longest together", () => {
    const [found, ...more] = judge([shadeOf("A", 300, 900), shadeOf("B", 1200, 400), shadeOf("C", 200, 700)]);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ id: "safety.room-cords", severity: "unproven", path: "/rooms/2" });
    expect(plain(found?.text ?? "")).toBe(
      "Cords hang at 3 windows of Hall: A, B and C. Two that hang 2100 mm apart or less can reach each other, be tied or twist into one loop. Say at each opening what hangs beside it.",
    );
  });

  it("are named up to six; more are counted", () => {
    const many = (count: number) =>
      judge(Array.from({ length: count }, (_, i) => shadeOf(`W${i + 1}`, 100, 200)))[0]?.text ?? "";
    expect(many(6)).toContain("Hall: W1, W2, W3, W4, W5 and W6.");
    expect(many(8)).toContain("Hall: W1, W2, W3, W4, W5, W6 and 2 more.");
  });

  it("are asked of only where two or more hang, and somebody has not said what is beside them", () => {
    const said = { left: { wallMm: 1, angleDeg: 180, shade: true } };
    expect(judge([shadeOf("A", 1, 2)])).toEqual([]);
    expect(judge([shadeOf("A", 1, 2, said), shadeOf("B", 1, 2, { right: said.left })])).toEqual([]);
    expect(judge([shadeOf("A", 1, 2, said), shadeOf("B", 1, 2)])).toHaveLength(1);
    const cordless = { windowName: "C", opening: {}, lift: { kind: "spring" } as never };
    expect(judge([shadeOf("A", 1, 2), cordless])).toEqual([]);
  });
});

describe("the lift that is proposed", () => {
  const careful = {
    kind: "spring",
    rearCords: "open",
    why: "Because.",
    cite: { source: "our-choice" },
  } as const;
  const of = (shade: object, kind: LiftKind = "spring") => {
    const { resolved } = handShade();
    const { kind: _kind, ...lift } = resolved.making.lift;
    return proposedLift({
      shade: { ...resolved, making: { ...resolved.making, lift }, ...shade } as typeof resolved,
      careful: { ...careful, kind },
    });
  };

  it("says why, where none was chosen, with the lock to press unless it is the lock", () => {
    const [found] = of({});
    expect(found).toMatchObject({
      id: "lift.proposed",
      severity: "note",
      path: "/rooms/0/windows/0/shade/making/lift/kind",
      text: "Because.",
      cite: careful.cite,
    });
    expect(found?.remedies).toMatchObject([
      {
        label: "Use a cord lock",
        patch: [{ path: "/rooms/0/windows/0/shade/making/lift/kind", value: "cord-lock" }],
      },
    ]);
    expect(of({}, "cord-lock")[0]?.remedies).toEqual([]);
  });

  it("is not proposed where it was chosen, nor for a shade that hangs and is not to be made safer", () => {
    expect(of({ making: handShade().resolved.making })).toEqual([]);
    expect(of({ existing: { tasks: ["restring"] } })).toEqual([]);
    expect(of({ existing: { tasks: ["make-safer"] } })).toHaveLength(1);
  });
});

describe("what the job is asked", () => {
  it("goods only in the United States, for others, and until it is said", () => {
    const ids = (job: Parameters<typeof askPlace>[0]) => askPlace(job).map(({ id }) => id);
    expect(ids({})).toEqual(["safety.place-unknown", "safety.purpose-unknown"]);
    expect(ids({ place: "us" })).toEqual(["safety.purpose-unknown"]);
    expect(ids({ place: "us", purpose: "gift" })).toEqual(["safety.goods-unknown"]);
    expect(ids({ place: "us", purpose: "own-home" })).toEqual([]);
    expect(ids({ place: "us", purpose: "gift", goods: "stock" })).toEqual([]);
    expect(ids({ place: "ca", purpose: "gift" })).toEqual([]);
  });
});

describe("the stamp of several shades", () => {
  const shade = (windowName: string, stamp: boolean) => ({
    windowName,
    safety: { stamp, stampText: `Stamp of ${windowName}` },
  });

  it("is there only where a rule failed, and is the shade’s own where there is one", () => {
    expect(jobStamp([shade("A", false), shade("B", false)])).toBeUndefined();
    expect(jobStamp([shade("A", true)])).toBe("Stamp of A");
  });

  it("counts and names up to four", () => {
    expect(jobStamp([shade("A", true), shade("B", false)])).toBe(
      "Rules on cords failed for 1 of 2 shades: A. Do not sell, give away or install it as it is planned.",
    );
    expect(jobStamp(["A", "B", "C", "D"].map((name) => shade(name, true)))).toBe(
      "Rules on cords failed for 4 of 4 shades: A, B, C, D. Do not sell, give away or install them as they are planned.",
    );
    expect(jobStamp(["A", "B", "C", "D", "E", "F"].map((name) => shade(name, name !== "B")))).toContain(
      "5 of 6 shades: A, C, D, E, 1 more.",
    );
  });
});
