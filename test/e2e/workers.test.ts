import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, firstVisit } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const TOLD = "A part of the planner stopped and was started again. Nothing is lost.";

/** Ends the page's workers of a kind from inside, as a lack of memory would: the page gets no message. */
async function kill(page: Page, kind: string): Promise<number> {
  const found = page.workers().filter((worker) => worker.url().includes(kind));
  await Promise.all(found.map((worker) => worker.evaluate(() => self.close()).catch(() => {})));
  return found.length;
}

test("a cutting worker that dies is replaced, the plan on the screen stays, and the maker is told once", async () => {
  const { page, errors } = await firstVisit(harness);
  await demo(page).click();
  await page.locator("#cutting-title button").click();
  await page.locator(".bolt-svg").first().waitFor();
  await expect.poll(() => kill(page, "cutting-worker")).toBeGreaterThan(0);
  await page.getByText(TOLD).waitFor();
  expect(await page.locator(".bolt-svg").count()).toBeGreaterThan(0);
  const ended = page.locator('[data-testid="cutting-state"][data-state="ended"]');
  const stop = page.getByRole("button", { name: "Stop here" });
  await stop.or(ended).first().waitFor();
  if (await stop.isVisible()) await stop.click().catch(() => {});
  await ended.waitFor();
  expect(await ended.textContent()).not.toContain("came to grief");
  await page.getByRole("button", { name: "Close", exact: true }).click();
  expect(await page.getByText(TOLD).count()).toBe(0);
  expect(errors).toEqual([]);
});

test("the worker that sums up a large job dies unseen: the next edit is summed up all the same", async () => {
  const { page, errors } = await firstVisit(harness);
  const windows = Array.from({ length: 70 }, (_, n) => ({
    id: `w${n}`,
    name: `Window ${n + 1}`,
    opening: { widthsMm: [900], heightsMm: [1500] },
  }));
  const job = {
    format: "shadewright-job",
    version: 1,
    id: "many",
    name: "Seventy windows (demo)",
    demo: true,
    rooms: [{ id: "r", name: "Room", windows }],
  };
  await page.setInputFiles('input[type="file"]', {
    name: "many.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(job)),
  });
  await page.locator("#rooms").waitFor();
  await page.locator("#cost").waitFor();
  await expect.poll(() => kill(page, "planning-worker")).toBeGreaterThan(0);
  // Whether it died at work or at rest, what is asked next is answered.
  await page.locator("#place-title button").click();
  await page.locator("#place select").first().selectOption({ index: 2 });
  await expect
    .poll(() => page.locator("#findings .chapter-sentence").textContent(), { timeout: 60_000 })
    .toMatch(/\d/);
  expect(errors).toEqual([]);
});
