import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import {
  DESK,
  demo,
  field,
  firstVisit,
  KEEPS_FILES,
  openAll,
  PHONE,
  pdfText,
  saved,
  sectionTitle,
} from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

describe.each([
  ["a desk", DESK],
  ["a phone", PHONE],
])("on %s", (_, viewport) => {
  test("from the first visit to a window of one's own and its workbook", async () => {
    const { page, errors } = await firstVisit(harness, { viewport, ...KEEPS_FILES });
    await demo(page).waitFor();
    await field(page, "Width").fill("35 3/8");
    await field(page, "Length").fill("58 3/4");
    await page.getByRole("button", { name: "Draw my shade" }).click();
    await page.getByRole("heading", { name: "Room, First window" }).waitFor();
    // Inside mount: 1/2 in off the width, 1/4 in off the length (defaults.ts, with their sources).
    await page
      .locator(".fig", { hasText: /34.7.8.in/ })
      .first()
      .waitFor();
    await page
      .locator(".fig", { hasText: /58.1.2.in/ })
      .first()
      .waitFor();
    await saved(page);

    await sectionTitle(page, "make").click();
    const downloading = page.waitForEvent("download");
    await page.getByRole("button", { name: "Download this shade’s workbook" }).click();
    const download = await downloading;
    expect(download.suggestedFilename()).toBe("My-windows-First-window.pdf");
    const { text, pages } = await pdfText(download);
    expect(pages).toBeGreaterThan(8);
    expect(text).toContain("First window");
    expect(text).toMatch(/34\s*7⁄8/);
    expect(text).toMatch(/child/i);
    expect(errors).toEqual([]);
    await page.context().close();
  });

  test("nothing is wider than the screen", async () => {
    const { page } = await firstVisit(harness, { viewport, ...KEEPS_FILES });
    const overflow = () =>
      page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    await page.locator(".shelf-elevation").waitFor();
    expect(await overflow()).toBe(0);
    for (const path of ["", "/kitchen-sink", "/kitchen-sink/bench"]) {
      await page.goto(`${harness.url}#/job/lantern-row${path}`);
      await page.locator("h1, h2").first().waitFor();
      await openAll(page);
      expect(await overflow(), path).toBe(0);
    }
    await page.context().close();
  });
});

test("a length that cannot be read is told beside its field, and stays as it was typed", async () => {
  const { page } = await firstVisit(harness, KEEPS_FILES);
  await field(page, "Width").fill("a yard or so");
  await field(page, "Length").fill("58 3/4");
  await page.getByRole("button", { name: "Draw my shade" }).click();
  const alert = page.getByRole("alert").filter({ hasText: "is not a length" });
  await alert.waitFor();
  expect(await alert.textContent()).toContain("35 3/8");
  expect(await field(page, "Width").inputValue()).toBe("a yard or so");
  await page.context().close();
});

// 35 3/8 in = 898.525 mm: NIST SP 811 (2008), appendix B.8, 1 in = 25.4 mm exactly.
test.each(["35 3/8", "35-3/8", '35.375"', `2' 11 3/8"`, "89,8525 cm", "898.525 mm"])(
  "a maker may write %s",
  async (written) => {
    const { page } = await firstVisit(harness, KEEPS_FILES);
    await field(page, "Width").fill(written);
    await field(page, "Length").fill("60");
    await page.getByRole("button", { name: "Draw my shade" }).click();
    expect(await field(page, "Width at the top").inputValue()).toBe("35 3/8");
    await page.context().close();
  },
);
