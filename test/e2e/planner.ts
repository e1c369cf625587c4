import { readFile } from "node:fs/promises";
import { getDocument } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { BrowserContextOptions, Download, Locator, Page } from "playwright-core";
import type { SectionId } from "../../src/web/sections/sections.ts";
import type { Harness } from "./browser.ts";

export const DESK = { width: 1440, height: 900 } as const;
export const PHONE = { width: 360, height: 740 } as const;

/** A field of every shade. */
export const WIDTH = "Width at the bottom";

export interface Planner {
  page: Page;
  errors: string[];
}

/** A browser that keeps the planner's files on its device, which takes as long again as to begin the planner. */
export const KEEPS_FILES = { serviceWorkers: "allow" } as const satisfies BrowserContextOptions;

/** The planner on its first visit, in a profile of its own, ready to be used; its files are kept only where told. */
export async function firstVisit(harness: Harness, options: BrowserContextOptions = {}): Promise<Planner> {
  const opened = await harness.open({ locale: "en-US", viewport: DESK, serviceWorkers: "block", ...options });
  await opened.page.goto(harness.url);
  await usable(opened.page);
  return opened;
}

export async function usable(page: Page): Promise<void> {
  await page.waitForFunction(() => performance.getEntriesByName("shadewright:usable").length > 0);
}

/** A shade of the demonstration, with its drawing. */
export async function openShade(page: Page, url: string, shadeId = "parlour-left"): Promise<void> {
  await page.goto(`${url}#/job/lantern-row/${shadeId}`);
  await page.locator(".sheet-svg").waitFor();
}

export function field(page: Page | Locator, name: string) {
  return page.getByRole("textbox", { name, exact: true });
}

/** Waits until the planner acknowledges that everything is on disk. */
export async function saved(page: Page): Promise<void> {
  await page.locator('[data-testid="save-state"][data-state="saved"]').waitFor();
}

/** The drawing as it stands: every line and every word of it. */
export function drawing(page: Page): Promise<string[]> {
  return page
    .locator(".sheet-svg")
    .evaluate((svg) =>
      [...svg.querySelectorAll("path, text")].map((item) => item.getAttribute("d") ?? item.textContent),
    );
}

/** The demonstration on the shelf. */
export function demo(page: Page) {
  return page.getByRole("link", { name: /^Number 3, Lantern Row/ });
}

/** The title of a section of the page, which opens and closes it. */
export function sectionTitle(page: Page, id: SectionId) {
  return page.locator(`#${id} .chapter-title button`);
}

const FOLDED = ".chapter-title button[aria-expanded=false], details.more-settings:not([open]) > summary";

/** Opens every chapter of a page and every list of settings in it, all that stand folded at once. */
export async function openAll(page: Page): Promise<void> {
  const opened = () =>
    page.evaluate(async (folded) => {
      const all = [...document.querySelectorAll<HTMLElement>(folded)].filter((one) => one.checkVisibility());
      for (const one of all) one.click();
      await new Promise((resolve) => requestAnimationFrame(resolve));
      return all.length;
    }, FOLDED);
  while ((await opened()) > 0);
}

/** @param download what was downloaded, or another file that knows its path */
export async function pdfText(download: Pick<Download, "path">): Promise<{ text: string; pages: number }> {
  const data = new Uint8Array(await readFile(await download.path()));
  const document = await getDocument({ data, verbosity: 0 }).promise;
  const parts: string[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const content = await (await document.getPage(number)).getTextContent();
    parts.push(content.items.map((item) => ("str" in item ? item.str : "")).join(" "));
  }
  return { text: parts.join("\n"), pages: document.numPages };
}

/** A finger goes down at a place of the window, moves by so many pixels in some steps, and comes up. */
export async function dragByFinger(
  page: Page,
  [x, y]: readonly [number, number],
  [byX, byY]: readonly [number, number],
): Promise<void> {
  const client = await page.context().newCDPSession(page);
  const send = (type: "touchStart" | "touchMove" | "touchEnd", share: number) =>
    client.send("Input.dispatchTouchEvent", {
      type,
      touchPoints: type === "touchEnd" ? [] : [{ x: x + share * byX, y: y + share * byY }],
    });
  await send("touchStart", 0);
  for (const share of [0.25, 0.5, 0.75, 1]) await send("touchMove", share);
  await send("touchEnd", 1);
}
