import { describe, expect, it } from "vitest";
import { plan } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";

type Job = NonNullable<Parameters<typeof jobWith>[1]>;
type Opening = NonNullable<Parameters<typeof jobWith>[0]["opening"]>;

function planned(job: Job, opening: Partial<Opening> = {}, lift: { cleatAboveFloorMm?: number } = {}) {
  const made = plan(
    jobWith(
      {
        opening: { widthsMm: [900], heightsMm: [2400], ...opening },
        shade: { mount: "to-size", making: { lift: { kind: "cord-lock", ...lift } } },
      },
      job,
    ),
  );
  const [shade] = made.shades;
  if (shade === undefined) throw new Error("invalid job: empty");
  const asked = [...made.findings, ...shade.findings];
  return {
    ids: asked.map(({ id }) => id),
    finding: (id: string) => asked.find((finding) => finding.id === id),
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
    expect(unsaid.outcome("IE-END")).toBe("not-shown-to-fail");
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
  it("cords on the side of a neighbour are told of, and hang on the other side if there is room", () => {
    const beside = { wallMm: 150, angleDeg: 135 };
    const { finding } = planned({ place: "gb", purpose: "for-sale" }, { right: beside });
    expect(finding("safety.neighbour-cords")?.remedies[0]?.label).toContain("left");
    const both = planned({ place: "gb", purpose: "for-sale" }, { left: beside, right: beside });
    expect(both.finding("safety.neighbour-cords")?.remedies).toEqual([]);
    expect(planned({ place: "gb", purpose: "for-sale" }, { left: beside }).ids).not.toContain(
      "safety.neighbour-cords",
    );
  });
});
