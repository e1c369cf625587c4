import { expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import type { UnitSystem } from "../../units/index.ts";
import type { ClothCutting } from "./cutting-plan.ts";
import { clothGapWords } from "./gap-words.ts";
import { planAndCut } from "./plan-and-cut.ts";

/** A cloth whose plan might take so much less. */
function withGap(gapMm: number): ClothCutting {
  const [cloth] = planAndCut(jobWith({})).cutting?.cloths ?? [];
  if (cloth === undefined || !("bolts" in cloth.answer)) throw new Error("nothing is cut");
  const { answer } = cloth;
  return {
    ...cloth,
    answer: { ...answer, status: "feasible", bound: { ...answer.bound, cost: answer.cost - gapMm } },
  };
}

test.each<[UnitSystem, number, string]>([
  ["imperial", 0.2, "Less than 1⁄8 yd might still be saved."],
  ["imperial", 114, "Less than 1⁄8 yd might still be saved."],
  ["imperial", 228.6, "Up to 1⁄4 yd "],
  ["metric", 0.2, "Less than 1 cm might still be saved."],
  ["metric", 40, "Up to 0.04 m "],
])("%s, a gap of %f mm: no saving of nought is told", (system, gapMm, words) => {
  const units = { system, ruler: system === "imperial" ? "1/8 in" : "1 mm" } as const;
  expect(clothGapWords(withGap(gapMm), units).replaceAll("\u00a0", " ")).toContain(words);
});
