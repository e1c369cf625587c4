import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, field, firstVisit, openShade, pdfText, saved, usable } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("after the first visit everything works without a network, the workbook included", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.context().setOffline(true);
  await page.reload();
  await usable(page);
  await demo(page).waitFor();
  await openShade(page, harness.url, "kitchen-sink");
  await field(page, "Width at the bottom").fill("41 3/4");
  await field(page, "Width at the bottom").blur();
  await saved(page);
  await page.reload();
  expect(await field(page, "Width at the bottom").inputValue()).toBe("41 3/4");
  await page.getByRole("button", { name: "Make, string, hang" }).click();
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Download this shade’s workbook" }).click();
  expect((await pdfText(await downloading)).text).toContain("Over the sink");
  expect(errors).toEqual([]);
  await page.context().close();
});
