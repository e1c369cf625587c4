import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { DESK, firstVisit, openAll, openShade, PHONE } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

interface Axe {
  run(options: object): Promise<{
    violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[];
    passes: unknown[];
  }>;
}

/** What axe finds against WCAG 2.2 AA on the page as it stands. */
async function violations(page: Page): Promise<string[]> {
  // Colours on the move have no contrast to judge.
  await page.waitForTimeout(150);
  await page.evaluate(AXE);
  const result = await page.evaluate(
    (tags) => (globalThis as unknown as { axe: Axe }).axe.run({ runOnly: { type: "tag", values: tags } }),
    RULES,
  );
  expect(result.passes.length).toBeGreaterThan(10);
  return result.violations.map(
    ({ id, nodes }) => `${id}: ${nodes.length} × ${nodes[0]?.html.slice(0, 160)} ${nodes[0]?.failureSummary}`,
  );
}

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
