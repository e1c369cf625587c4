import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { violations } from "./axe.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { DESK, firstVisit, openAll, openShade, PHONE } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const screens: [string, (page: Page) => Promise<void>][] = [
  [
    "shelf",
    async (page) => {
      await page.locator(".shelf-elevation").waitFor();
      await page.locator(".live-drawing").waitFor();
    },
  ],
  [
    "job",
    async (page) => {
      await page.goto(`${harness.url}#/job/lantern-row`);
      await page.locator(".elevation-window").first().waitFor();
      await openAll(page);
    },
  ],
  [
    "shade",
    async (page) => {
      await openShade(page, harness.url, "kitchen-sink");
      await page.locator(".fig").first().click();
    },
  ],
  [
    "shade, all open, from the back",
    async (page) => {
      await openShade(page, harness.url, "studio-north");
      await page.getByRole("tab", { name: "Back" }).click();
      await openAll(page);
    },
  ],
  [
    "bench",
    async (page) => {
      await page.goto(`${harness.url}#/job/lantern-row/parlour-left/bench`);
      await page.locator(".bench-step").waitFor();
    },
  ],
  [
    "nothing here",
    async (page) => {
      await page.goto(`${harness.url}#/nowhere`);
      await page.getByRole("heading", { name: "There is nothing here" }).waitFor();
    },
  ],
];

describe.each(["light", "dark"] as const)("in the %s", (colorScheme) => {
  describe.each([
    ["desk", DESK],
    ["phone", PHONE],
  ])("on a %s", (_, viewport) => {
    let page: Page;
    beforeAll(async () => {
      ({ page } = await firstVisit(harness, { viewport, colorScheme }));
    });
    afterAll(() => page.context().close());

    test.each(screens)("axe finds nothing on the screen “%s”", async (_, show) => {
      await show(page);
      expect(await violations(page)).toEqual([]);
    });
  });
});
