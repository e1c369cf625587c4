import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { backed, bare, fromTo, hanging, looped, pulls } from "../../../test/safety/cords.ts";
import type { Check, Quantity } from "../rules/rule.ts";
import { CloserRows } from "./closer-rows.ts";
import type { CordGeometry } from "./cord-geometry.ts";
import type { ShadeFacts } from "./lift-geometry.ts";
import {
  boardVariant,
  bothVariants,
  cleatVariant,
  guideVariants,
  kindVariants,
  leadVariant,
  releaseVariant,
  rowVariant,
  tailVariant,
  type Variant,
  variantPatch,
} from "./variants.ts";

const plain = (text = "") => text.replaceAll("\u00a0", " ");
const { resolved, ...made } = handShade({ job: { units: { system: "metric", ruler: "1 mm" } } });
/** 1,524 mm long on a board of 19 mm. */
const FACTS: ShadeFacts = { ...made, shade: resolved };
const board = { ...resolved.board, thicknessMm: 19 };
const factsAt = (topAboveFloorMm?: number, lift: object = {}): ShadeFacts => {
  const { topAboveFloorMm: _top, ...size } = FACTS.size;
  const making = { ...resolved.making, lift: { ...resolved.making.lift, ...lift } };
  return {
    ...FACTS,
    shade: { ...resolved, board, making },
    size: { ...size, ...(topAboveFloorMm === undefined ? {} : { topAboveFloorMm }) },
  } as ShadeFacts;
};
const check = (quantity: Quantity, over: Partial<Check> = {}): Check => ({
  ...{ quantity, comparison: "at-most", limit: 220, unit: "mm", states: "all" },
  ...over,
});
const words = (variants: readonly Variant[]) =>
  variants.map(({ settings, says }) => [settings.flat(), plain(says().label), plain(says().changes)]);

describe("another lift", () => {
  it("is offered for each that is not there and hangs no free cord, the most careful first", () => {
    expect(words(kindVariants(FACTS, hanging(300)))).toEqual([
      [["lift", "kind", "spring"], "Raise it by a spring", "No cord hangs at the front."],
      [["lift", "kind", "tube-wand"], "Raise it by a tube and a rigid wand", "No cord hangs at the front."],
      [["lift", "kind", "motor"], "Raise it by a tube and a motor", "No cord hangs at the front."],
      [
        ["lift", "kind", "tube-loop"],
        "Raise it by a tube and a loop on a tension device",
        "One loop hangs, and no cord with a free end.",
      ],
    ]);
    const kinds = (geometry: CordGeometry) =>
      kindVariants(FACTS, geometry).map(({ geometry: { kind } }) => kind);
    expect(kinds(looped(600))).toEqual(["spring", "tube-wand", "motor"]);
    expect(kinds(bare())).toEqual(["tube-wand", "motor", "tube-loop"]);
  });

  it("takes all away that was of the lift before, but for the cords of a top rail, and says that those stay", () => {
    const rail = pulls(400, { raises: "top-rail", count: 2 });
    const before = {
      ...looped(600, "tensioner", {
        pulls: [pulls(300), rail],
        wandMm: 500,
        leadLooseMm: 100,
        leadLowMm: 50,
      }),
      rear: backed([200], { boardSpansMm: [150], top: { holds: true } }).rear,
    } as CordGeometry;
    const [spring] = kindVariants(FACTS, before);
    expect(spring?.geometry).toMatchObject({
      kind: "spring",
      pulls: [rail],
      rear: { boardSpansMm: [], top: { holds: false } },
    });
    for (const gone of ["loop", "wandMm", "leadLooseMm", "leadLowMm"])
      expect(spring?.geometry).not.toHaveProperty(gone);
    expect(spring?.says().changes).toBe("The top rail’s own cords hang at the front as before.");
    const [, wand] = kindVariants(FACTS, before);
    expect(wand?.geometry.rear?.top).toEqual({ holds: true });
  });

  it("with a loop ends it 1.6 m above the floor, or half way down where that is less or its height is not known", () => {
    const drop = (topMm?: number, lift: object = {}) =>
      kindVariants(factsAt(topMm, lift), bare()).at(-1)?.geometry.loop;
    expect(drop()?.dropMm).toBe(762);
    expect(drop(2400)?.dropMm).toBe(762);
    // 2,219 − 19 − 1,600 mm.
    expect(drop(2219)?.dropMm).toBe(600);
    // Less than 150 mm are nothing to take hold of.
    expect(drop(1769)?.dropMm).toBe(762);
    expect(drop(1770)?.dropMm).toBe(151);
    expect(drop(2219)).toMatchObject({ device: "tensioner", exitBelowTopMm: 19 });
    expect(drop(2219, { loopJoint: "breakaway" })?.device).toBe("breakaway");
  });
});

describe("what runs up the back", () => {
  it("is closed by a gripped or a sewn sleeve, where it is not yet", () => {
    const guides = (guide: "open" | "ring-locked" | "enclosed") =>
      guideVariants(backed([200], { guide })).map(({ settings, geometry }) => [
        settings.flat().at(-1),
        geometry.rear?.guide,
      ]);
    const both = [
      ["ring-locked", "ring-locked"],
      ["enclosed", "enclosed"],
    ];
    expect(guides("open")).toEqual(both);
    expect(guides("ring-locked")).toEqual([both[1]]);
    expect(guides("enclosed")).toEqual([]);
    expect(guideVariants(bare())).toEqual([]);
    expect(words(guideVariants(backed([200]))).map(([, label]) => label)).toEqual([
      "Run the rear cords in a woven sleeve that every ring grips",
      "Run the rear cords in sewn sleeves",
    ]);
  });

  it("ends in a part that comes apart, where the rule takes that in the place of its limit", () => {
    const takes = check("cord-between-contacts", { orElse: "rear-release" });
    const [part] = releaseVariant(backed([200]), takes);
    expect(part?.geometry.rear?.releases).toBe(true);
    expect(words(releaseVariant(backed([200]), takes))).toEqual([
      [
        ["lift", "rearRelease", "breakaway"],
        "End every rear cord in a part that comes apart",
        "At what load it does, 6 kg at the most, only a weight shows.",
      ],
    ]);
    for (const [geometry, rule] of [
      [bare(), takes],
      [backed([200], { releases: true }), takes],
      [backed([200]), check("cord-between-contacts")],
    ] as const)
      expect(releaseVariant(geometry, rule)).toEqual([]);
  });

  it("has closer rows: how many, how far apart, and how many there were", () => {
    const closer = new CloserRows(resolved, made.size, made.grid);
    const hung = {
      ...hanging(fromTo(300, 1500), { joinedMm: fromTo(75, 1275) }),
      rear: backed([190]).rear,
    } as CordGeometry;
    const { settings, says, geometry } = rowVariant(FACTS, closer, 9, hung);
    const apartMm = (made.size.finishedLengthMm - made.grid.headrailMm) / 9.5;
    expect(settings[0]?.slice(0, 2)).toEqual(["fold", "largestSpacingMm"]);
    expect(plain(says().label)).toBe("Set the rows closer: 9 rows");
    expect(says().deed).toBe("Set the rows closer");
    expect(plain(says().changes)).toBe(
      `${Math.round(apartMm)} mm apart, instead of 7 rows, with as many more rings to sew.`,
    );
    expect(geometry.rear?.spans).toHaveLength(9);
    expect(geometry.rear?.heldN).toHaveLength(9);
    // Half a fold hangs below the bottom row: what the cords take up is the rest below the headrail.
    const travelMm = made.size.finishedLengthMm - made.grid.headrailMm - apartMm / 2;
    expect(geometry.travelMm).toBeCloseTo(travelMm, 6);
    const [pull] = geometry.pulls;
    expect(pull?.lengthMm.mm[1]).toBeCloseTo(300 + travelMm, 6);
    expect(pull?.joinedMm?.mm[1]).toBeCloseTo(75 + travelMm, 6);
    const railed = rowVariant(FACTS, closer, 9, bare({ pulls: [pulls(400, { raises: "top-rail" })] }));
    expect(railed.geometry.pulls[0]?.lengthMm.mm).toEqual([400]);
  });
});

describe("cords at the front", () => {
  const cut = (missedByMm: number, quantity: Quantity = "free-cord-length", loweredMm = 500) =>
    tailVariant(
      resolved,
      hanging(fromTo(loweredMm, loweredMm + 1200), { from: "last eye" }),
      check(quantity),
      missedByMm,
    );

  it("are cut by what they are too long, down to the next mark and to 150 mm that a hand holds", () => {
    const [shorter] = cut(120.4);
    expect(words(cut(120.4))).toEqual([
      [["lift", "tailMm", 379], "Cut the tail 379 mm below the last eye, shade lowered", ""],
    ]);
    expect(shorter?.says().deed).toBe("Cut the tails shorter");
    expect(shorter?.geometry.pulls[0]?.lengthMm.mm).toEqual([379, 1579]);
    expect([cut(350).length, cut(351).length]).toEqual([1, 0]);
    expect([cut(0).length, cut(0.5).length]).toEqual([0, 1]);
  });

  it("are cut only for what their length decides, and only those that raise the shade", () => {
    for (const quantity of [
      ...["joined-cord-length", "joined-cord-loop", "pull-cord-low-point", "hanging-length"],
      ...["loose-loop-length", "any-loop-length", "secured-by-device"],
    ] as const)
      expect(cut(100, quantity as Quantity), quantity).toHaveLength(1);
    for (const quantity of [
      "cord-between-contacts",
      "loop-perimeter",
      "operating-cord-length",
      "cleat-height",
    ] as const)
      expect(cut(100, quantity), quantity).toEqual([]);
    const railed = bare({ pulls: [pulls(500, { raises: "top-rail" })] });
    expect(tailVariant(resolved, railed, check("free-cord-length"), 100)).toEqual([]);
    const beside = bare({ pulls: [pulls(500, { raises: "top-rail" }), pulls(400)] });
    const [one] = tailVariant(resolved, beside, check("free-cord-length"), 100);
    expect(one?.geometry.pulls.map(({ lengthMm }) => lengthMm.mm[0])).toEqual([500, 300]);
  });

  it("go on a cleat at the height that is asked for, up to the next mark", () => {
    const asked = check("cleat-height", { comparison: "at-least", limit: 1599.5 });
    const two = bare({ pulls: [pulls(300), pulls(300)] });
    expect(words(cleatVariant(resolved, two, asked, 1599.5))).toEqual([
      [["lift", "cleatAboveFloorMm", 1600], "Fix the cleat 1600 mm above the floor", ""],
    ]);
    const [higher] = cleatVariant(resolved, two, asked, 1599.5);
    expect(higher?.geometry.pulls.map(({ cleatAboveFloorMm }) => cleatAboveFloorMm)).toEqual([1600, 1600]);
    expect(cleatVariant(resolved, bare(), asked, 1600)).toEqual([]);
    expect(cleatVariant(resolved, two, check("free-cord-length"), 1600)).toEqual([]);
  });

  it("a lead is clipped where some of it hangs free; a top stays where it is without its rail", () => {
    const lead = (leadLooseMm?: number) =>
      leadVariant(bare({ kind: "motor", ...(leadLooseMm === undefined ? {} : { leadLooseMm }) }));
    expect([lead(), lead(0)]).toEqual([[], []]);
    expect(lead(1)[0]?.geometry.leadLooseMm).toBe(0);
    expect(words(lead(1))).toEqual([
      [["lift", "leadLooseMm", 0], "Clip the lead to board and wall along all of its length", ""],
    ]);
    expect(boardVariant({ ...FACTS, lift: { kind: "spring" } })).toEqual([]);
    const topRail = {
      ...{ side: "left" as const, tailDownMm: 500, tailUpMm: 900, housingHeightMm: 24, dropMm: 400 },
      ...{ cords: [1, 2], eyes: [{ xMm: 50 }], seat: { xMm: 200 } },
    } as const;
    const hung = boardVariant({ ...FACTS, lift: { kind: "spring", topRail } });
    expect(words(hung)).toEqual([
      [["fold", "topDropMm", 0], "Hang it from the board", "Its top then stays where it is."],
    ]);
    expect(hung[0]?.geometry.pulls).toEqual([]);
    expect(hung[0]?.geometry.railSpansMm).toBeUndefined();
  });
});

describe("two changes at once", () => {
  const of = (label: string, over: object = {}): Variant => ({
    ...{ settings: [["lift", label, 1]], says: () => ({ label, ...over }), geometry: bare() },
  });

  it("are told in one sentence, what each changes after the other, and as one deed where either has one", () => {
    const said = bothVariants(of("Do this", { changes: "A." }), of("Do that", { changes: "B." })).says();
    expect(said).toEqual({ label: "Do this; do that", changes: "A. B." });
    expect(bothVariants(of("Do this", { deed: "This" }), of("Do that")).says()).toEqual({
      ...{ label: "Do this; do that", deed: "This; do that", changes: "" },
    });
    expect(bothVariants(of("Do this"), of("Do that", { deed: "That" })).says().deed).toBe("Do this; that");
  });

  it("are one patch, and leave what the second has made of the first", () => {
    const second = { ...of("b"), geometry: bare({ travelMm: 7 }) };
    const both = bothVariants(of("a"), second);
    expect(both.settings).toEqual([
      ["lift", "a", 1],
      ["lift", "b", 1],
    ]);
    expect(both.geometry.travelMm).toBe(7);
    const patch = variantPatch(resolved, [
      ["lift", "kind", "spring"],
      ["fold", "rows", 8],
    ]);
    expect(patch.map(({ path }) => path.split("/").slice(-2).join("/"))).toEqual(
      expect.arrayContaining(["lift/kind", "fold/rows"]),
    );
  });
});
