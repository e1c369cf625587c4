import { describe, expect, it } from "vitest";
import { newJob, newWindow, type Job as WholeJob, type Window } from "../../src/job/index.ts";
import { plan, proveRemedies } from "../../src/plan/index.ts";
import { madeForText } from "../../src/safety/index.ts";
import { lengthText } from "../../src/units/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

type Job = NonNullable<Parameters<typeof jobWith>[1]>;
type Opening = NonNullable<Parameters<typeof jobWith>[0]["opening"]>;

function planned(
  job: Job,
  opening: Partial<Opening> = {},
  lift: { cleatAboveFloorMm?: number; tailMm?: number } = {},
) {
  const asJob = jobWith(
    {
      opening: { widthsMm: [900], heightsMm: [2400], ...opening },
      shade: { mount: "to-size", making: { lift: { kind: "cord-lock", ...lift } } },
    },
    job,
  );
  const made = plan(asJob);
  const [shade] = made.shades;
  if (shade === undefined) throw new Error("invalid job: empty");
  const asked = [...made.findings, ...shade.findings];
  return {
    shade,
    ids: asked.map(({ id }) => id),
    finding: (id: string) => asked.find((finding) => finding.id === id),
    proven: (id: string) =>
      proveRemedies(asJob, made)
        .shades.flatMap(({ findings }) => findings)
        .filter((finding) => finding.id === id)
        .flatMap(({ remedies }) => remedies.map(({ label }) => label)),
    result: (ruleId: string) => shade.safety.results.find((result) => result.ruleId === ruleId),
    outcome: (ruleId: string) => shade.safety.results.find((result) => result.ruleId === ruleId)?.outcome,
  };
}

describe("what was not said is not proven, and asks", () => {
  it("whether US goods are made to order or for stock, which 16 CFR 1120.3(e) holds to 8 in", () => {
    const unsaid = planned({ place: "us", purpose: "for-sale" });
    expect(unsaid.outcome("US-STOCK-8")).toBe("not-proven");
    expect(unsaid.finding("safety.goods-unknown")?.remedies).toHaveLength(2);
    expect(planned({ place: "us", purpose: "for-sale", goods: "stock" }).outcome("US-STOCK-8")).toBe(
      "failed",
    );
    const custom = planned({ place: "us", purpose: "for-sale", goods: "custom" });
    expect([custom.outcome("US-STOCK-8"), custom.ids.includes("safety.goods-unknown")]).toEqual([
      "does-not-apply",
      false,
    ]);
    expect(planned({ place: "ca", purpose: "for-sale" }).ids).not.toContain("safety.goods-unknown");
  });

  it("the height of the window, without which no Australian rule on heights holds", () => {
    const unsaid = planned({ place: "au", purpose: "for-sale" });
    expect(unsaid.outcome("AU-LOOP")).toBe("not-proven");
    // A cleat 1600 mm above the floor may lie above the lock of a window that hangs low.
    expect(unsaid.outcome("AU-CLEAT")).toBe("not-proven");
    expect(unsaid.ids).toContain("safety.height-unknown");
    const low = planned({ place: "au", purpose: "for-sale" }, { sillAboveFloorMm: 100 });
    expect([low.outcome("AU-LOOP"), low.ids.includes("safety.height-unknown")]).toEqual(["failed", false]);
  });

  it("whom shades are for whose job names a client", () => {
    const named = planned({ place: "gb", client: "Lantern Mill" }).finding("safety.purpose-unknown");
    expect(named?.text).toContain("Lantern Mill");
    expect(named?.remedies).toHaveLength(4);
  });

  it("what a child can stand on, from which heights are counted", () => {
    const high = { sillAboveFloorMm: 2200, heightsMm: [600] };
    const unsaid = planned({ place: "ie", purpose: "for-sale" }, high);
    expect(unsaid.ids).toContain("safety.foothold-unknown");
    // It ends at least 1.6 m above the floor, and not above a table that may stand there.
    expect(unsaid.outcome("IE-END")).toBe("not-proven");
    const none = planned({ place: "ie", purpose: "for-sale" }, { ...high, footholds: [] });
    expect(none.outcome("IE-END")).toBe("not-shown-to-fail");
    const seat = planned({ place: "ie", purpose: "for-sale" }, { ...high, footholdMm: 900 });
    // 2200 + 600 − board 19 − lock 24 − tail 300 − travel, from the floor; 900 mm less from the seat.
    const end = (footholdMm: number) =>
      planned({ place: "ie", purpose: "for-sale" }, { ...high, footholdMm }).result("IE-END")?.value ?? 0;
    expectNear(end(0) - end(900), 900, 1e-9);
    expect([seat.outcome("IE-END"), seat.ids.includes("safety.foothold-unknown")]).toEqual([
      "not-proven",
      false,
    ]);
  });
});

describe("a cleat that no cord is wound on", () => {
  it.each([
    ["3 m up", { sillAboveFloorMm: 1500 }, 3000],
    ["above its lock", { heightsMm: [900], sillAboveFloorMm: 600 }, 1600],
  ])(
    "%s: the rule on cleats is not proven, and it is a fault of its own",
    (_, opening, cleatAboveFloorMm) => {
      const found = planned({ place: "au", purpose: "for-sale" }, opening, { cleatAboveFloorMm });
      expect(found.outcome("AU-CLEAT")).toBe("not-proven");
      expect(found.finding("safety.cleat-astray")?.severity).toBe("fix");
    },
  );
});

describe("a loop with a connector that comes apart", () => {
  /** EN 13120, as reported: 0.6 m above the floor, 2/3 of the blind’s height, 6 kg. */
  it("has the rows on breakaway loops read, and not those on tensioners", () => {
    const of = (loopJoint: "closed" | "breakaway", sillMm: number | undefined) => {
      const [shade] = plan(
        jobWith(
          {
            opening: {
              widthsMm: [900],
              heightsMm: [1500],
              ...(sillMm === undefined ? {} : { sillAboveFloorMm: sillMm }),
            },
            shade: { mount: "to-size", making: { lift: { kind: "tube-loop", loopJoint } } },
          },
          { place: "eu", purpose: "for-sale" },
        ),
      ).shades;
      const outcomes = new Map(shade?.safety.results.map(({ ruleId, outcome }) => [ruleId, outcome]));
      return ["EU-H-PULL", "EU-H-BRK", "EU-L-BRK", "EU-BRK"].map((id) => outcomes.get(id));
    };
    const none = "does-not-apply";
    expect(of("breakaway", 900)).toEqual([none, "not-shown-to-fail", none, "not-proven"]);
    expect(of("breakaway", undefined)).toEqual([none, none, "not-shown-to-fail", "not-proven"]);
    expect(of("closed", 900).slice(1)).toEqual([none, none, none]);
  });
});

describe("two shades side by side", () => {
  const beside = { wallMm: 150, angleDeg: 135 };
  const near = (opening: object, lift: object = {}) =>
    planned({ place: "gb", purpose: "for-sale", units: { system: "metric", ruler: "1 mm" } }, opening, lift);

  const lockOf = (opening: object) => {
    const { lift } = near(opening).shade;
    if (lift.kind !== "cord-lock") throw new Error("invalid test job: no lock");
    return lift;
  };
  const seatMm = (opening: object) => lockOf(opening).seat.xMm;

  it("whose cords can reach each other are told of, from whichever end they hang", () => {
    // At the near end: from the lock to the edge, and 2 · 150 mm · sin 67.5° across a corner of 135°.
    const right = near({ right: beside }).finding("safety.neighbour-cords");
    const toEdgeMm = 900 - seatMm({ right: beside });
    expect(right?.text).toContain(
      lengthText(toEdgeMm + 2 * 150 * Math.sin((67.5 * Math.PI) / 180), { system: "metric", ruler: "1 mm" }),
    );
    // From the far end of a narrow shade long tails reach as well.
    expect(near({ left: beside }).finding("safety.neighbour-cords")?.text).toContain(
      "from the shade at its left",
    );
    expect(near({ left: { ...beside, shade: false } }).ids).not.toContain("safety.neighbour-cords");
  });

  it("two cords of L reach each other over 2 L and no further", () => {
    const opening = { heightsMm: [1500], sillAboveFloorMm: 900 };
    const { tailRaisedMm, seat } = lockOf(opening);
    // Straight on, half of the wall between stands beside each: what is left of 2 L once the shade is crossed.
    const justMm = (2 * tailRaisedMm - seat.xMm) / 2;
    for (const [wallMm, reached] of [
      [justMm - 1, true],
      [justMm + 1, false],
    ] as const)
      expect(
        near({ ...opening, left: { wallMm, angleDeg: 180 } }).ids.includes("safety.neighbour-cords"),
      ).toBe(reached);
  });

  it("a way out is offered where the cords then reach no more", () => {
    const wide = { widthsMm: [4000], heightsMm: [1200], sillAboveFloorMm: 900, right: beside };
    const found = near(wide, { tailMm: 150 });
    expect(found.proven("safety.neighbour-cords")).toEqual(["Work it from the left", "Raise it by a spring"]);
    const narrow = near({ right: beside });
    expect(narrow.proven("safety.neighbour-cords")).toEqual(["Raise it by a spring"]);
  });

  it("of a room nobody said what hangs beside what: it is asked once, with how far two cords reach", () => {
    const job = newJob({ id: "bay", name: "Bay", system: "metric" });
    const windows = ["left", "middle", "right"].map((name): Window => {
      const one = newWindow({ id: name, name, widthMm: 700, heightMm: 1500, mount: "to-size" });
      return { ...one, shade: { ...one.shade, making: { lift: { kind: "cord-lock" } } } };
    });
    job.rooms[0]?.windows.push(...windows);
    const asked = (one: WholeJob) => plan(one).findings.find(({ id }) => id === "safety.room-cords");
    const tails = plan(job).shades.map(({ lift }) => (lift.kind === "cord-lock" ? lift.tailRaisedMm : 0));
    const [first = 0, second = 0] = tails.sort((a, b) => b - a);
    expect(asked(job)?.text).toContain(`${lengthText(first + second, job.units)} apart or less`);
    expect(asked(job)?.text).toContain("3 windows");
    for (const { opening } of windows) opening.left = { angleDeg: 135, wallMm: 100, shade: true };
    expect(asked(job)).toBeUndefined();
    const spring = jobWith({ shade: { mount: "to-size", making: { lift: { kind: "spring" } } } });
    expect(asked(spring)).toBeUndefined();
  });
});

describe("for whom shades are made, at the foot of every page", () => {
  it.each([
    [{}, "Made for whom: not said, place: not said"],
    [{ place: "gb" }, "Made for whom: not said, Great Britain"],
    [{ place: "us", purpose: "for-sale", goods: "stock" }, "Made for sale, United States, made for stock"],
  ] as const)("%j", (job, text) => {
    expect(madeForText(job)).toBe(text);
  });
});
