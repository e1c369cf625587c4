import { readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { unreadForced } from "./own-checks.ts";
import { firstVisit, openShade } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** What could be pressed and would be seen; figures and titles of sections are words on paper. */
function pressable(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>("button, summary, input[type=file], [role=slider]")]
      .filter(
        (one) =>
          one.checkVisibility({ visibilityProperty: true }) && !one.matches(".fig, .chapter-title > button"),
      )
      .map((one) => one.textContent?.slice(0, 40) ?? ""),
  );
}

async function printed(page: Page): Promise<string> {
  const path = join(tmpdir(), `printed-${process.pid}.pdf`);
  await page.pdf({ path, format: "A4" });
  const document = await getDocument({ data: new Uint8Array(await readFile(path)), verbosity: 0 }).promise;
  await rm(path);
  const pages: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    pages.push(items.map((item) => ("str" in item ? item.str : "")).join(" "));
  }
  return pages.join("\n").replace(/\s+/g, " ");
}

test("the browser prints the plan of a shade and of its job, and no buttons", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  const shade = await printed(page);
  expect(shade).toContain("Parlour, Street window, left");
  expect(shade).toMatch(/finished 35/);
  expect(shade).not.toMatch(/Add a bed|Undo|outside|Finished size given|Raise it by/);
  await page.emulateMedia({ media: "print" });
  expect(await pressable(page)).toEqual([]);
  expect(await page.locator(".sheet-svg").isVisible()).toBe(true);
  await page.emulateMedia({ media: null });
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator(".elevation-window").first().waitFor();
  const job = await printed(page);
  for (const name of ["Over the sink", "Above the bed", "North light"]) expect(job).toContain(name);
  await page.emulateMedia({ media: "print" });
  expect(await pressable(page)).toEqual([]);
  await page.context().close();
});

/** A colour as the page computes it. */
function painted(page: Page, selector: string, property: string): Promise<string> {
  return page
    .locator(selector)
    .first()
    .evaluate((one, name) => getComputedStyle(one).getPropertyValue(name), property);
}

test.each(["light", "dark"] as const)(
  "in forced colours, %s, drawing, slider and choices are told apart",
  async (colorScheme) => {
    const { page } = await firstVisit(harness, { forcedColors: "active", colorScheme });
    await openShade(page, harness.url);
    const ground = await painted(page, "body", "background-color");
    const lines = await page
      .locator(".sheet-svg path")
      .evaluateAll((all) =>
        all.map((one) => getComputedStyle(one).stroke).filter((stroke) => stroke !== "none"),
      );
    expect(lines.length).toBeGreaterThan(5);
    expect(lines).not.toContain(ground);
    expect(await painted(page, ".raise-fill", "background-color")).not.toBe(ground);
    const chosen = await painted(page, ".segment:has(:checked)", "background-color");
    expect(chosen).not.toBe(await painted(page, ".segment:not(:has(:checked))", "background-color"));
    expect(await page.locator(".rail-next-go").isVisible()).toBe(true);
    expect(await unreadForced(page)).toEqual([]);
    await page.context().close();
  },
);
