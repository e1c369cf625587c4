import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { openJobText } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages } from "./read-pdf.ts";

function demonstration() {
  const opened = openJobText(readFileSync("examples/lantern-row.json", "utf8"));
  if (!opened.ok) throw new Error("the demonstration does not open");
  return opened.job;
}

/** Five strips: rows, columns, board and both ways of the flat cloth. The second is stamped in two lines. */
const JOBS = [
  ["the stair window of the demonstration", plan(demonstration(), { only: ["stair-window"] }), undefined],
  [
    "a balloon for sale in the United States",
    plan(
      jobWith(
        { shade: { style: "pleated-balloon" } },
        { place: "us", purpose: "for-sale", units: { system: "imperial", ruler: "1/8 in" } },
      ),
    ),
    // Under the stamp five strips do not end beside the square: they go over whole.
    "letter",
  ],
] as const;

describe.each(JOBS)("%s", (_name, planned, onSecond) => {
  test.each(["a4", "letter"] as const)(
    "on %s the list of its five strips stands on one page",
    async (paper) => {
      const input = { plan: planned, sets: ["strips"], paper, fonts: FONTS } as const;
      const pages = await readPages(await openPdf(await makeWorkbook(input)));
      const listed = pages.filter(({ text }) => text.includes("How it is laid"));
      expect(listed).toHaveLength(1);
      expect(listed[0]).toBe(pages[paper === onSecond ? 1 : 0]);
      const keys = listed[0]?.runs.map(({ text }) => text).filter((text) => /^[A-Z]$/.test(text));
      expect(keys).toEqual(["A", "B", "C", "D", "E"]);
    },
  );
});
