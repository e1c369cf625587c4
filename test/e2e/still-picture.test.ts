import { mkdirSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { violations } from "./axe.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, openAll, openShade, PHONE } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const FINE = '[data-picture="fine"]';

/** A relaxed shade, whose cloth must come to rest, on the sheet Picture. */
async function openPicture(page: Page): Promise<void> {
  await openShade(page, harness.url);
  await openAll(page);
  await page.getByRole("radio", { name: "Relaxed" }).check({ force: true });
  await page.getByRole("tab", { name: "Picture" }).click();
  await page.locator(FINE).waitFor({ timeout: 180_000 });
}

function pictureText(page: Page): Promise<string> {
  return page.locator("[data-picture] .sheet-svg").evaluate((svg) => svg.innerHTML);
}

test("the picture is worked out beside the page: coarse, then fine, and the last height asked for stays", async () => {
  const { page, errors } = await firstVisit(harness);
  await openPicture(page);
  expect(page.workers().some((worker) => worker.url().includes("still-worker"))).toBe(true);
  const lowered = await pictureText(page);
  // What the cloth at rest does stands with the shape, once the maker pauses.
  const drawsIn = page.locator("#shape .findings", { hasText: "Each side draws in by up to" });
  await drawsIn.waitFor({ timeout: 180_000 });
  const slider = page.getByRole("slider", { name: "Raise" });
  await slider.focus();
  await page.keyboard.press("End");
  await page.locator('[data-picture="coarse"]').waitFor();
  await page.locator(FINE).waitFor({ timeout: 180_000 });
  expect(await page.locator(".caption-words").textContent()).toContain("Raised.");
  expect(await pictureText(page)).not.toBe(lowered);
  await page.keyboard.press("Home");
  await expect
    .poll(async () => (await page.locator(FINE).count()) > 0 && (await pictureText(page)) === lowered, {
      timeout: 180_000,
    })
    .toBe(true);
  expect(await violations(page)).toEqual([]);
  // Cards show the same cloth in small, once nothing else is to be drawn.
  const drawn = (what: string) => () => page.locator(what).count();
  await expect.poll(drawn('.style-card svg[data-drawn="picture"]'), { timeout: 180_000 }).toBe(10);
  await page.getByRole("link", { name: "Shadewright" }).first().click();
  await expect.poll(drawn('.shelf-elevation[data-drawn="pictures"]'), { timeout: 180_000 }).toBe(1);
  expect(errors).toEqual([]);
});

test("where the worker cannot be begun the picture is drawn all the same", async () => {
  const { page } = await firstVisit(harness);
  await page.route("**/still-worker*", (route) => route.abort());
  await openPicture(page);
  expect(await page.locator(".caption-words").textContent()).toContain("As it hangs");
});

test.each(["light", "dark"] as const)("it fits a phone, in %s", async (colorScheme) => {
  const { page, errors } = await firstVisit(harness, { viewport: PHONE, colorScheme });
  await openPicture(page);
  const picture = page.locator("[data-picture] .sheet-svg");
  await picture.scrollIntoViewIfNeeded();
  const box = await picture.boundingBox();
  expect(box?.width ?? 0).toBeGreaterThan(90);
  expect(box?.x ?? -1).toBeGreaterThanOrEqual(0);
  expect((box?.x ?? 0) + (box?.width ?? 0)).toBeLessThanOrEqual(PHONE.width);
  if (process.env.PICTURES !== undefined) {
    mkdirSync(process.env.PICTURES, { recursive: true });
    await page.screenshot({ path: `${process.env.PICTURES}/still-phone-${colorScheme}.png` });
  }
  expect(errors).toEqual([]);
});
