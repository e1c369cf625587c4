import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { BRITISH, foreignIn } from "../spellings.ts";
import { violations } from "./axe.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { lostWords } from "./larger-text.ts";
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
      await openAll(page);
      await page.getByRole("tab", { name: "Back" }).click();
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

/** All that is read on a screen or heard from it; what can be typed over is the maker’s. */
function said(page: Page): Promise<string> {
  return page.evaluate((heard) => {
    const parts = [document.title, document.body.textContent];
    for (const name of heard)
      for (const element of document.querySelectorAll(`[${name}]`))
        parts.push(element.getAttribute(name) ?? "");
    return parts.join("\n");
  }, HEARD);
}

const HEARD = ["alt", "aria-label", "aria-description", "aria-valuetext", "placeholder", "title"];

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

    test.each(screens)(
      "axe finds nothing on the screen “%s”, its words are of the place, and none is lost when text is larger or spaced out",
      async (name, show) => {
        await show(page);
        expect(await violations(page)).toEqual([]);
        // The demonstration hangs in the United States and is measured in inches.
        const words = await said(page);
        expect(foreignIn(words, BRITISH)).toEqual([]);
        if (/job|all open/.test(name)) expect(words).toMatch(/\bfabric\b/);
        if (colorScheme === "light") expect(await lostWords(page, viewport.width > 1000)).toEqual([]);
      },
    );
  });
});
