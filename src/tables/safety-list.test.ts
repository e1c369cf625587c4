import { describe, expect, it } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { expectNear } from "../../test/near.ts";
import { verdictIn } from "../../test/words.ts";
import { PLACES } from "../job/index.ts";
import { plan } from "../plan/index.ts";
import { FINDINGS_LIST, SAFETY_LIST, type Table, wholeList } from "./index.ts";

const corded: Parameters<typeof jobWith>[0] = {
  opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 800, recessDepthMm: 120 },
  shade: { mount: "inside", making: { lift: { kind: "cord-lock" } } },
};
const canada = plan(jobWith(corded, { place: "ca", purpose: "for-sale" }));

function rowsOf({ header, rows }: Table) {
  return rows.map((row) => Object.fromEntries(header.map((name, i) => [name, row[i]])));
}

describe("the list of rules on cords", () => {
  const rows = rowsOf(wholeList(SAFETY_LIST, canada));
  const rule = (id: string) => rows.find((row) => row.rule === id);

  // SOR/2019-97: s. 5, free end at most 22 cm; s. 6, 22 cm between two points; s. 7, loop at most 44 cm around.
  it.each([
    ["CA-FREE", 220, "s. 5"],
    ["CA-SPAN", 220, "s. 6"],
    ["CA-LOOP", 440, "s. 7"],
  ])("%s failed with its number, limit, height, source, date and confidence", (id, limitMm, section) => {
    const row = rule(id);
    expect(row).toMatchObject({
      outcome: "failed",
      limit: limitMm,
      unit: "mm",
      pullN: 35,
      asOf: "2021-05",
      status: "in force",
      confidence: "legal text or official page",
    });
    expect(Number(row?.value)).toBeGreaterThan(limitMm);
    expect(row?.source).toContain(section);
  });

  it("a free end is longest when the shade is raised, and its hem is then as high as sill and travel make it", () => {
    const row = rule("CA-FREE");
    const [shade] = canada.shades;
    expect(row?.worstRaisedShare).toBe(1);
    // The shade hangs inside an opening 1500 mm high whose sill is 800 mm above the floor.
    const top = 1500 + 800;
    expectNear(
      Number(row?.worstHemAboveFloorMm) + Number(row?.worstHemBelowTopMm),
      top,
      0.01,
      "hem above floor and below the top line",
    );
    expectNear(
      Number(row?.worstHemBelowTopMm),
      (shade?.size.finishedLengthMm ?? 0) - (shade?.grid.travelMm ?? 0),
      0.01,
      "hem when raised",
    );
  });

  it("has the heaviest first, and every result of every shade", () => {
    const order = ["failed", "not proven", "not shown to fail", "does not apply"];
    const ranks = rows.map((row) => order.indexOf(String(row.outcome)));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(ranks).not.toContain(-1);
    expect(rows.length).toBe(canada.shades[0]?.safety.results.length);
  });

  it("passes no verdict on a shade, wherever it hangs", () => {
    for (const place of PLACES) {
      for (const row of rowsOf(
        wholeList(SAFETY_LIST, plan(jobWith(corded, { place, purpose: "for-sale" }))),
      )) {
        const said = `${row.words} ${row.why} ${row.outcome}`;
        expect(verdictIn(said), said).toBeUndefined();
      }
    }
  });

  it("leaves the findings as they are: only what failed or is open stands there", () => {
    const ids = rowsOf(wholeList(FINDINGS_LIST, canada)).map((row) => row.finding);
    for (const row of rows) {
      const id = `safety.${String(row.rule).toLowerCase()}`;
      expect(ids.includes(id), id).toBe(row.outcome === "failed");
    }
    expect(ids).toContain("safety.not-proven");
  });
});
