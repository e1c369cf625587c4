import { describe, expect, it } from "vitest";
import { footholdsOf, highestFoothold } from "../../src/job/index.ts";
import { plan, proveRemedies } from "../../src/plan/index.ts";
import { jobWith } from "../job-with.ts";

type WindowInput = Parameters<typeof jobWith>[0];
type Job = NonNullable<Parameters<typeof jobWith>[1]>;

function planned(
  window: { opening?: Partial<NonNullable<WindowInput["opening"]>>; lift?: object },
  job: Job = { place: "eu", purpose: "for-sale" },
) {
  const made = jobWith(
    {
      opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900, ...window.opening },
      shade: { mount: "to-size", making: { lift: { kind: "spring", ...window.lift } } },
    },
    { units: { system: "metric", ruler: "1 mm" }, ...job },
  );
  const [shade] = proveRemedies(made, plan(made)).shades;
  if (shade === undefined) throw new Error("invalid job: empty");
  return {
    shade,
    finding: (id: string) => shade.findings.find((finding) => finding.id === id),
    outcome: (ruleId: string) => shade.safety.results.find((one) => one.ruleId === ruleId)?.outcome,
    why: (ruleId: string) => shade.safety.results.find((one) => one.ruleId === ruleId)?.why,
  };
}

describe("what a child can stand on", () => {
  const corded = { kind: "cord-lock" };

  it("is a list with heights, and the highest counts", () => {
    const footholds = [
      { kind: "chair", heightMm: 450 },
      { kind: "bed", heightMm: 600 },
      { kind: "stairs", heightMm: 200 },
    ] as const;
    const { outcome, why } = planned(
      { opening: { footholds: [...footholds] }, lift: { kind: "cord-lock" } },
      { place: "au", purpose: "for-sale" },
    );
    // A cleat at 1600 mm is 1000 mm above the bed: less than the 1600 mm of the 2014 standard.
    expect(outcome("AU-CLEAT")).toBe("not-proven");
    expect(why("AU-CLEAT")).toContain("from the bed");
    expect(highestFoothold(footholds)?.heightMm).toBe(600);
  });

  it("is asked where nobody said, and answered by an empty list; a file of before still counts", () => {
    const asked = planned({ lift: corded }).finding("safety.foothold-unknown");
    expect(asked?.remedies[0]?.patch).toEqual([
      { op: "add", path: "/rooms/0/windows/0/opening/footholds", value: [] },
    ]);
    expect(
      planned({ opening: { footholds: [] }, lift: corded }).finding("safety.foothold-unknown"),
    ).toBeUndefined();
    expect(
      planned({ opening: { footholdMm: 0 }, lift: corded }).finding("safety.foothold-unknown"),
    ).toBeUndefined();
    expect(footholdsOf({ footholdMm: 450 })?.map(({ heightMm }) => heightMm)).toEqual([450]);
    expect(footholdsOf({ footholdMm: 450, footholds: [] })).toEqual([]);
  });
});

describe("the motor’s lead is a cord", () => {
  const canada = { place: "ca", purpose: "for-sale" } as const;
  const motor = (leadLooseMm?: number) =>
    planned(
      {
        lift: { kind: "motor", rearCords: "enclosed", ...(leadLooseMm === undefined ? {} : { leadLooseMm }) },
      },
      canada,
    );

  it("is not proven until it is measured; then it fails over 22 cm, and once clipped no more", () => {
    expect(motor().outcome("GEN-CORDLESS")).toBe("not-proven");
    const loose = motor(221);
    expect([loose.outcome("CA-SPAN"), loose.outcome("CA-LOOP"), loose.outcome("GEN-CORDLESS")]).toEqual([
      "failed",
      "failed",
      "failed",
    ]);
    const finding = loose.finding("safety.ca-span");
    expect(finding?.cause?.id).toBe("safety.cords-lead");
    expect(finding?.remedies.map(({ label }) => label)).toContain(
      "Clip the lead to board and wall along all of its length",
    );
    expect(motor(0).outcome("CA-SPAN")).not.toBe("failed");
  });

  it("whose remote may hold button cells, on which places have rules", () => {
    expect(motor().shade.cautions.find(({ id }) => id === "button-cell-rules")?.text).toContain(
      "16 CFR 1263",
    );
    for (const [place, rule] of [
      ["us", "US-BUTTON"],
      ["au", "AU-BUTTON"],
      ["gb", "UK-BUTTON"],
    ] as const) {
      const at = { place, purpose: "for-sale" } as const;
      expect(planned({ lift: { kind: "motor" } }, at).outcome(rule), rule).toBe("not-proven");
      expect(planned({ lift: { kind: "spring" } }, at).outcome(rule), rule).toBe("does-not-apply");
    }
  });
});

describe("rear cords that come apart (EN 13120 as a UK maker reads it: over 20 cm, a part on each cord, 6 kg)", () => {
  const wide = { rearCords: "open", kind: "spring" };
  const far = { fold: { spacingMm: 260 } };
  const of = (rearRelease: "none" | "breakaway") => {
    const job = jobWith(
      {
        opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
        shade: {
          mount: "to-size",
          making: { ...far, lift: { ...wide, kind: "spring", rearCords: "open", rearRelease } },
        },
      },
      { place: "eu", purpose: "for-sale", units: { system: "metric", ruler: "1 mm" } },
    );
    const [shade] = proveRemedies(job, plan(job)).shades;
    if (shade === undefined) throw new Error("invalid job: empty");
    return shade;
  };

  it("answer the rule as far as a test can show, and no other rule’s limit", () => {
    const none = of("none");
    const row = (shade: typeof none, id: string) => shade.safety.results.find(({ ruleId }) => ruleId === id);
    expect(row(none, "EU-REAR")?.outcome).toBe("failed");
    const finding = none.findings.find(({ id }) => id === "safety.eu-rear");
    expect(finding?.remedies.map(({ label }) => label)).toContain(
      "End every rear cord in a part that comes apart",
    );
    const fitted = of("breakaway");
    expect(row(fitted, "EU-REAR")).toMatchObject({ outcome: "not-proven", test: "rear-release" });
    expect(fitted.safety.tests.find(({ id }) => id === "rear-release")?.text).toMatch(/6(?:\.0)?\s?kg/);
  });

  it("are bought, one for each cord, and tied in", () => {
    const fitted = of("breakaway");
    const bought = fitted.cost.shopping.find(({ id }) => id === "rear-release");
    expect(bought?.quantity).toBe(fitted.lift.cords.length);
    expect(fitted.steps.find(({ id }) => id === "string-tie")?.text).toContain("comes apart");
    expect(of("none").cost.shopping.some(({ id }) => id === "rear-release")).toBe(false);
  });
});

describe("shades that are worked together", () => {
  const beside = { wallMm: 50, angleDeg: 180, shade: true };

  it("are told of with the loop that their cords can make, and worked each by itself instead", () => {
    const tied = planned({ opening: { right: { ...beside, together: true } }, lift: { kind: "cord-lock" } });
    const finding = tied.finding("safety.shared-cords");
    expect(finding?.severity).toBe("fix");
    expect(finding?.text).toContain("100");
    expect(finding?.remedies.map(({ label }) => label)).toEqual(["Work each by itself"]);
    expect(
      planned({ opening: { right: beside }, lift: { kind: "cord-lock" } }).finding("safety.shared-cords"),
    ).toBeUndefined();
  });
});

describe("fire", () => {
  it("stands with its distance on every first sheet; in a public building the usual flame tests are named and asked for", () => {
    const home = planned({}, { place: "gb", purpose: "own-home" });
    expect(home.shade.cautions.find(({ id }) => id === "fire")?.text).toContain("1 m from heaters");
    expect(home.finding("safety.flame-test")).toBeUndefined();
    const hall = planned({}, { place: "gb", purpose: "public-building" });
    const named = hall.shade.cautions.find(({ id }) => id === "flame-tests")?.text ?? "";
    for (const test of ["BS 5867-2", "NFPA 701", "EN 13773", "Local codes"])
      expect(named, test).toContain(test);
    expect(hall.finding("safety.flame-test")?.severity).toBe("unproven");
  });
});
