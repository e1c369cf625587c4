import { describe, expect, it } from "vitest";
import { handShade } from "../../../test/hand-shade.ts";
import { verdictIn } from "../../../test/words.ts";
import { PLACES, PURPOSES } from "../../job/index.ts";
import { carefulLift } from "./careful-lift.ts";
import { reviewShade } from "./review-shade.ts";

describe("the careful first proposal", () => {
  const everywhere = [undefined, ...PLACES].flatMap((place) =>
    [undefined, ...PURPOSES].map((purpose) => [place, purpose] as const),
  );

  it.each(everywhere)("%s, %s: leaves no cord rule failed that it could leave", (place, purpose) => {
    const { kind, rearCords, why, cite } = carefulLift({ place, purpose });
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
    expect(carefulLift({ place: "ca", purpose: "gift" }).cite).toEqual({
      source: "ca-sor-2019-97",
      at: "s. 5",
    });
    expect(carefulLift({ place: "us", purpose: "for-sale" }).cite).toEqual({ source: "us-a100-1-2022" });
    expect(carefulLift({ place: "au", purpose: "for-sale" }).cite.source).toBe("au-2014-standard");
    expect(carefulLift({}).cite.source).toBe("our-choice");
  });
});
