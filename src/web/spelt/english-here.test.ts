import { expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { plan } from "../../plan/index.ts";
import { englishHere } from "./english-here.ts";

const window = { opening: { widthsMm: [914.4], heightsMm: [1524] } };
const inches = { system: "imperial", ruler: "1/8 in" } as const;

test("with no place set the browser's language decides, with one set the place does", () => {
  const unplaced = jobWith(window, { units: inches });
  delete unplaced.place;
  expect(englishHere(unplaced, "en-US").spelling).toBe("american");
  expect(englishHere(unplaced, "en-GB").spelling).toBe(plan(unplaced).english.spelling);
  for (const place of ["us", "gb"] as const) {
    const placed = { ...unplaced, place };
    for (const language of ["en-US", "en-GB"])
      expect(englishHere(placed, language)).toBe(plan(placed).english);
  }
  const metric = jobWith(window, { units: { system: "metric", ruler: "1 mm" } });
  delete metric.place;
  expect(englishHere(metric, "en-US").spelling).toBe("british");
});
