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
