import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, firstVisit, openShade, pdfText, sectionTitle } from "./planner.ts";

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
  if (await stop.isVisible()) await stop.click({ timeout: 5000 }).catch(() => {});
  await ended.waitFor();
  expect(await ended.textContent()).not.toContain("came to grief");
  await page.getByRole("button", { name: "Close", exact: true }).click();
  expect(await page.getByText(TOLD).count()).toBe(0);
  expect(errors).toEqual([]);
});

/** Opens a job so large that it is summed up off the page's thread. */
async function openManyWindows(page: Page): Promise<void> {
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
}

test("the worker that sums up a large job dies unseen: the next edit is summed up all the same", async () => {
  const { page, errors } = await firstVisit(harness);
  await openManyWindows(page);
  await page.locator("#cost").waitFor();
  await expect.poll(() => kill(page, "planning-worker")).toBeGreaterThan(0);
  // Whether it died at work or at rest, what is asked next is answered.
  await page.locator("#place-title button").click();
  await page.locator("#place select").first().selectOption({ index: 2 });
  await expect
    .poll(() => page.locator("#findings .chapter-sentence").textContent(), { timeout: 180_000 })
    .toMatch(/\d/);
  expect(errors).toEqual([]);
});

test("a planning worker that hangs at its work is replaced, the plan asked again, and the maker told once", async () => {
  const { page, errors } = await firstVisit(harness);
  // The first one takes every message and answers none but that it has begun; who waits for it waits a twentieth as long.
  await page.evaluate(() => {
    const Real = Worker;
    let begun = 0;
    globalThis.Worker = class extends Real {
      #hangs: boolean;
      #sent = 0;
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        this.#hangs = String(url).includes("planning-worker") && begun++ === 0;
      }
      override postMessage(message: unknown, given?: Transferable[] | StructuredSerializeOptions): void {
        if (this.#hangs && this.#sent++ > 0) return;
        super.postMessage(message, Array.isArray(given) ? { transfer: given } : given);
      }
    };
    const later = setTimeout;
    let first = true;
    const soon = (run: () => void, ms = 0) => {
      const isLate = first && ms > 25_000;
      if (isLate) first = false;
      return later(run, isLate ? ms / 20 : ms);
    };
    globalThis.setTimeout = soon as typeof setTimeout;
  });
  await openManyWindows(page);
  await page.getByText(TOLD).waitFor();
  await expect
    .poll(() => page.locator("#findings .chapter-sentence").textContent(), { timeout: 180_000 })
    .toMatch(/\d/);
  expect(await page.getByText(TOLD).count()).toBe(1);
  await page.locator("#cost").waitFor();
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a workbook whose worker dies on the way is made all the same", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await sectionTitle(page, "make").click();
  const downloading = page.waitForEvent("download", { timeout: 180_000 });
  await page.getByRole("button", { name: "Download this shade’s workbook" }).click();
  await expect.poll(() => kill(page, "planning-worker")).toBeGreaterThan(0);
  const { text, pages } = await pdfText(await downloading);
  expect(pages).toBeGreaterThan(4);
  expect(text).toContain("Parlour");
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a file whose reader dies on the way is opened all the same", async () => {
  const { page, errors } = await firstVisit(harness);
  // The first reader ends before it is asked anything, as for a lack of memory.
  await page.evaluate(() => {
    const Real = Worker;
    let begun = 0;
    globalThis.Worker = class extends Real {
      constructor(url: string | URL, options?: WorkerOptions) {
        super(url, options);
        if (String(url).includes("importer-worker") && begun++ === 0)
          setTimeout(() => this.dispatchEvent(new ErrorEvent("error", { message: "out of memory" })), 0);
      }
    };
  });
  const buffer = Buffer.from(
    readFileSync("examples/lantern-row.json", "utf8").replaceAll("lantern-row", "again"),
  );
  await page.setInputFiles('input[type="file"]', {
    name: "again.json",
    mimeType: "application/json",
    buffer,
  });
  await page.locator("#rooms").waitFor();
  expect(page.url()).toContain("#/job/again");
  await page.getByText(TOLD).waitFor();
  expect(errors).toEqual([]);
  await page.context().close();
});
