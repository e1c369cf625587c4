import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { verdictIn } from "../../../test/words.ts";
import { type Job, PLACES, PURPOSES } from "../../job/index.ts";
import { carefulLift } from "./careful-lift.ts";
import { reviewShade } from "./review-shade.ts";

const METRIC = { system: "metric", ruler: "1 mm" } as const;
const INCHES = { system: "imperial", ruler: "1/8 in" } as const;

const cited = (asked: Pick<Job, "place" | "purpose">) => carefulLift({ ...asked, units: METRIC }).cite;

describe("the careful first proposal", () => {
  const everywhere = [undefined, ...PLACES].flatMap((place) =>
    [undefined, ...PURPOSES].map((purpose) => [place, purpose] as const),
  );

  it.each(everywhere)("%s, %s: leaves no cord rule failed that it could leave", (place, purpose) => {
    const { kind, rearCords, why, cite } = carefulLift({ place, purpose, units: METRIC });
    const shade = handShade({ job: { place, purpose } });
    const { resolved, size, grid, form, mass } = shade;
    if (kind === "cord-lock" || kind === "cleat" || kind === "tube-loop")
      throw new Error(`invalid proposal: ${kind}`);
    const { values: review } = reviewShade({
      shade: resolved,
      size,
      grid,
      form,
      mass,
      lift: { kind, rearCords },
    });
    expect(review.results.filter(({ outcome }) => outcome === "failed")).toEqual([]);
    expect(why).toMatch(/^A cord that hangs free would fail: /);
    expect(verdictIn(why)).toBeUndefined();
    // The rule that it names is one that a cord lock on this shade fails.
    const corded = reviewShade({ ...shade, shade: resolved }).values;
    const failed = corded.results.filter(({ outcome }) => outcome === "failed");
    expect(failed.map((result) => result.cite)).toContainEqual(cite);
  });

  it("names the law before a standard, and a standard before advice", () => {
    expect(cited({ place: "ca", purpose: "gift" })).toEqual({
      source: "ca-sor-2019-97",
      at: "s. 5",
    });
    expect(cited({ place: "us", purpose: "for-sale" })).toEqual({ source: "us-a100-1-2022" });
    expect(cited({ place: "au", purpose: "for-sale" }).source).toBe("au-2014-standard");
    expect(cited({}).source).toBe("our-choice");
  });

  // 200 mm are 7.874 in: the inch is 25.4 mm exactly (international yard and pound agreement of 1959).
  it("tells a limit of our own in the units of the job, in its rule, its finding and the proposal", () => {
    const said = (units: Job["units"]) => {
      const { resolved, ...made } = handShade({ job: { units } });
      const { values, findings } = reviewShade({ ...made, shade: resolved });
      const words = values.results.find(({ ruleId }) => ruleId === "CAUTION-FREE")?.words ?? "";
      const found = findings.find(({ text }) => text.startsWith(words))?.text ?? "";
      const { why } = carefulLift({ units });
      expect([found, why].map((text) => text.includes(words))).toEqual([true, true]);
      return words.replaceAll("\u00a0", " ");
    };
    const words = "A cord with a free end that can be reached is at most";
    expect(said(METRIC)).toBe(`${words} 200 mm long.`);
    expect(said(INCHES)).toBe(`${words} 7 7⁄8 in (200 mm) long.`);
  });
});
