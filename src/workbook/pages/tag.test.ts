import { expect, test } from "vitest";
import { FONTS } from "../../../test/workbook/fonts.ts";
import { openPdf, readPages } from "../../../test/workbook/read-pdf.ts";
import { x1Job } from "../../../test/workbook/x1-job.ts";
import type { Place } from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import { makeWorkbook } from "../make-workbook.ts";

test.each<Place>(["us", "gb", "eu", "au"])(
  "%s: a tag of one side is one page, undated too",
  async (place) => {
    for (const paper of ["letter", "a4"] as const) {
      const bytes = await makeWorkbook({
        plan: plan({ ...x1Job(), place }),
        sets: ["tag"],
        paper,
        fonts: FONTS,
      });
      const pages = await readPages(await openPdf(bytes));
      expect(pages, paper).toHaveLength(1);
      expect(pages[0]?.text).toContain("not the official text of any rule");
    }
  },
);

// What a tag asks of a maker who prints it from a job is known: which shade it is, and when it is made.
test.each<Place>(["us", "gb", "eu", "au"])(
  "%s: no line of a tag is left blank of which the job knows",
  async (place) => {
    const input = {
      plan: plan({ ...x1Job(), place }),
      sets: ["tag"],
      paper: "a4",
      fonts: FONTS,
      createdOn: new Date(2025, 2, 1),
    } as const;
    const [shade] = input.plan.shades;
    const asked = new Set(shade?.tag.lines.flatMap(({ asks }) => asks ?? []));
    expect(asked).toContain("model");
    const pages = await readPages(await openPdf(await makeWorkbook(input)));
    const words = pages.map(({ text }) => text).join(" ");
    expect(words).toContain("Landing window, Ferry House");
    if (asked.has("made")) expect(words).toContain("2025-03");
  },
);
