import { describe, expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { FONTS } from "../../test/workbook/fonts.ts";
import { openPdf, readPages } from "../../test/workbook/read-pdf.ts";
import { LIFT_KINDS, PLACES } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import { makeWorkbook } from "./make-workbook.ts";
import { SET_PRESETS } from "./print-sets/index.ts";

async function printed(place: (typeof PLACES)[number], kind: (typeof LIFT_KINDS)[number]): Promise<string> {
  const job = jobWith(
    {
      opening: { widthsMm: [900], heightsMm: [1200], sillAboveFloorMm: 900 },
      shade: { mount: "to-size", making: { lift: { kind, rearCords: "enclosed" } } },
    },
    { place, purpose: "for-sale" },
  );
  const pages = await readPages(
    await openPdf(
      await makeWorkbook({ plan: plan(job), sets: SET_PRESETS.handover, paper: "a4", fonts: FONTS }),
    ),
  );
  return pages
    .map(({ text }) => text)
    .join(" ")
    .replace(/\s+/g, " ");
}

/** Of SOR/2019-97, s. 9: what goes with the shade must not refer to the Act or the Regulations. */
const NAMES_LAW =
  /\b(?:SOR|DORS|CCPSA|LCSPC|CFR|Regulations?|R[èe]glements?|Act|[Ll]aws?|Loi|ss?\. \d+)\b|\bCA-[A-Z]|Justice Laws/;

describe("what is handed over with the shade", () => {
  test.each(LIFT_KINDS)("in Canada names no law, and has the warning in both languages: %s", async (kind) => {
    const text = await printed("ca", kind);
    expect(NAMES_LAW.exec(text)?.[0], text).toBeUndefined();
    for (const named of ["SOR/2019-97, s. 15", "16 CFR 1263", "a law on cells", "by law"])
      expect(named).toMatch(NAMES_LAW);
    for (const words of [
      "WARNING",
      "STRANGULATION HAZARD",
      "MISE EN GARDE",
      "RISQUE D’ÉTRANGLEMENT",
      "22 cm",
      "44 cm",
    ])
      expect(text, words).toContain(words);
    expect(text).toContain("Never knot cords together");
    expect(text).toContain("goes out with the shade");
  });

  test.each(PLACES)("passes no verdict, quotes no source and keeps no plan: %s", async (place) => {
    const text = await printed(place, "spring");
    expect(text).not.toMatch(/Source:|[Kk]eep (?:this|the) plan|\b[A-Z]{2}-[A-Z]{3,}/);
    expect(text).not.toMatch(/undefined|NaN|\[object/);
    expect(text).toContain(place === "us" ? "Keep cribs, beds, chairs" : "Keep cots, beds, chairs");
  });

  test("no step says to keep the plan with the shade", () => {
    const steps = LIFT_KINDS.flatMap(
      (kind) =>
        plan(jobWith({ shade: { mount: "to-size", making: { lift: { kind } } } })).shades[0]?.steps ?? [],
    );
    for (const { text } of steps) expect(text).not.toMatch(/[Kk]eep (?:this|the) plan with/);
  });
});
