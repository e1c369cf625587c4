import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { WEB } from "../../scripts/build-web.mjs";
import { serve } from "../../src/server/index.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { DESK, demo, field, firstVisit, openShade, saved, usable, WIDTH } from "./planner.ts";
import { spoilRecord, storedRecord } from "./shelf-database.ts";
import { keepTyping } from "./typing.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const DEMO = "lantern-row";
const DAY_MS = 86_400_000;

/** The width that the shelf has, mm, read with no help of the planner's code. */
async function storedWidthMm(page: Page): Promise<number> {
  const { job } = (await storedRecord(page, "jobs", DEMO)) as {
    job: { rooms: { windows: { opening: { widthsMm: number[] } }[] }[] };
  };
  return job.rooms[0]?.windows[0]?.opening.widthsMm[2] ?? Number.NaN;
}

/** A release of the planner in a folder of its own, whose next one is put there by `next`. */
async function servedRelease() {
  const folder = mkdtempSync(join(tmpdir(), "shadewright-release-"));
  cpSync(WEB, folder, { recursive: true });
  const serving = await serve({ planner: folder, port: 0 });
  return {
    url: serving.url,
    next() {
      for (const ending of ["", ".gz", ".br"])
        rmSync(join(folder, `service-worker.js${ending}`), { force: true });
      const worker = readFileSync(join(WEB, "service-worker.js"), "utf8");
      writeFileSync(join(folder, "service-worker.js"), worker.replace(/"[0-9a-f]{16}"/, '"next"'));
    },
    async close() {
      await serving.close();
      rmSync(folder, { recursive: true });
    },
  };
}

test("a newer release taken in the middle of an edit loses nothing that was called saved", async () => {
  const release = await servedRelease();
  const { page: other } = await harness.open({ locale: "en-US", viewport: DESK });
  await other.goto(release.url);
  await usable(other);
  await other.evaluate(() => navigator.serviceWorker.ready);
  const page = await other.context().newPage();
  await openShade(page, release.url);
  release.next();
  await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
  const notice = page.getByRole("status").filter({ hasText: "A newer Shadewright is ready" });
  await notice.waitFor();
  // Where the newest edit is not on disk at that moment the browser asks, and the maker goes all the same.
  page.on("dialog", (dialog) => void dialog.accept());
  const acknowledged = await keepTyping(page);
  await expect.poll(() => acknowledged.length, { timeout: 180_000 }).toBeGreaterThan(2);
  const reloaded = page.waitForEvent("load");
  await notice.getByRole("button", { name: "Change to it" }).click();
  await reloaded;
  await page.locator(".sheet-svg").waitFor();
  expect(await storedWidthMm(page)).toBeGreaterThanOrEqual(acknowledged.at(-1) ?? Number.NaN);
  // A tab that did not ask, of a first visit, still runs the release before, whose files are gone.
  await other.getByRole("status").filter({ hasText: "changed in another tab" }).waitFor();
  const again = other.waitForEvent("load");
  await other.getByRole("button", { name: "Load this page anew" }).click();
  await again;
  await usable(other);
  await page.context().close();
  await release.close();
});

test("a shelf that a newer release took over is told, and the edit leaves as a file", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await field(page, WIDTH).fill("34");
  await saved(page);
  const newer = await page.context().newPage();
  await newer.goto(`${harness.url}manifest.webmanifest`);
  await newer.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open("shadewright", 99);
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          opening.result.close();
          resolve();
        };
      }),
  );
  await field(page, WIDTH).fill("33");
  await page.getByRole("alert").filter({ hasText: "A newer Shadewright keeps the shelf" }).waitFor();
  // The other pages say so as well, and none says that the job is gone.
  await newer.goto(harness.url);
  await newer.getByRole("alert").filter({ hasText: "all that stands on it" }).waitFor();
  await newer.goto(`${harness.url}#/job/lantern-row`);
  await newer.getByRole("heading", { name: "The shelf cannot be read" }).waitFor();
  expect(await page.getByTestId("save-state").textContent()).toBe("Not saved");
  expect(await field(page, WIDTH).inputValue()).toBe("33");
  expect(await storedWidthMm(page)).toBeCloseTo(34 * 25.4, 6);
  await page.context().close();
});

test("a clock set back or forward loses no edit, and nothing of the bin", async () => {
  const { page } = await harness.open({ locale: "en-US", viewport: DESK });
  // Only the time of day is set: what measures how long something takes goes on.
  await page.addInitScript(() => {
    const real = Date.now.bind(Date);
    Date.now = () => real() + Number(localStorage.getItem("clock-off") ?? 0);
  });
  const setClock = (byMs: number) =>
    page.evaluate((ms) => localStorage.setItem("clock-off", String(ms)), byMs);
  await page.goto(harness.url);
  await usable(page);
  await openShade(page, harness.url);
  await field(page, WIDTH).fill("34");
  await saved(page);
  await setClock(-3650 * DAY_MS);
  await field(page, WIDTH).fill("33");
  await saved(page);
  expect(await storedWidthMm(page)).toBeCloseTo(33 * 25.4, 6);
  await page.goto(`${harness.url}#/`);
  await page.getByRole("button", { name: /^Delete/ }).click();
  await page.getByRole("button", { name: "Delete it", exact: true }).click();
  await page.getByText("30 days left").waitFor();
  // Set right again, the job has not waited ten years; nor has it where the clock runs ahead.
  for (const [byMs, left] of [
    [0, 29],
    [3650 * DAY_MS, 28],
  ] as const) {
    await setClock(byMs);
    await page.reload();
    await usable(page);
    await page.getByText(`${left} days left`).waitFor();
  }
  await page.getByRole("button", { name: /^Put it back/ }).click();
  await demo(page).waitFor();
  await openShade(page, harness.url);
  expect(await field(page, WIDTH).inputValue()).toBe("33");
  await page.context().close();
});

test("a job whose list of changes, count of saves and card are spoilt opens, is told, edited and kept", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await field(page, WIDTH).fill("34");
  await saved(page);
  await page.goto(`${harness.url}#/`);
  await demo(page).waitFor();
  await spoilRecord(page, "jobs", DEMO, { history: "gone", revision: "seven" });
  await spoilRecord(page, "cards", DEMO, { name: 7, windows: "two", savedAt: "never" });
  await page.reload();
  await usable(page);
  await demo(page).click();
  await page.getByRole("status").filter({ hasText: "The list of changes could not be read" }).waitFor();
  await openShade(page, harness.url);
  expect(await field(page, WIDTH).inputValue()).toBe("34");
  await field(page, WIDTH).fill("33");
  await saved(page);
  await page.reload();
  await page.locator(".sheet-svg").waitFor();
  expect(await field(page, WIDTH).inputValue()).toBe("33");
  await page.getByRole("button", { name: `Undo: ${WIDTH}` }).click();
  expect(await field(page, WIDTH).inputValue()).toBe("34");
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a card whose job is lost says so, and can be taken off", async () => {
  const { page } = await firstVisit(harness);
  await demo(page).waitFor();
  await spoilRecord(page, "jobs", DEMO, "lost");
  await page.reload();
  await usable(page);
  await demo(page).click();
  await page.getByRole("heading", { name: "This job is not on the shelf" }).waitFor();
  await page.goto(`${harness.url}#/`);
  await page.getByRole("button", { name: /^Delete/ }).click();
  await page.getByRole("button", { name: "Delete it", exact: true }).click();
  await demo(page).waitFor({ state: "detached" });
  await page.context().close();
});

test("a shelf of the first release opens with its jobs and their changes", async () => {
  const { page } = await harness.open({ locale: "en-US", viewport: DESK });
  await page.goto(`${harness.url}manifest.webmanifest`);
  const document = JSON.parse(readFileSync("test/documents/job-v1-before-lift-kinds.json", "utf8"));
  const job = { ...document, id: "old", name: "From long ago" };
  await page.evaluate(
    (job) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open("shadewright", 1);
        opening.onupgradeneeded = () => {
          opening.result.createObjectStore("jobs", { keyPath: "id" });
          opening.result.createObjectStore("cards", { keyPath: "id" });
          opening.result.createObjectStore("marks");
        };
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const transaction = opening.result.transaction(["jobs", "cards"], "readwrite");
          const patch = (value: string) => [{ op: "replace", path: "/name", value }];
          const past = [{ label: "Name", forward: patch(job.name), backward: patch("Before") }];
          transaction
            .objectStore("jobs")
            .put({ id: job.id, revision: 3, savedAt: 1, job, history: { past, future: [] } });
          transaction
            .objectStore("cards")
            .put({ id: job.id, name: job.name, demo: false, windows: 1, savedAt: 1 });
          transaction.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    job,
  );
  await page.goto(harness.url);
  await usable(page);
  await page.getByRole("link", { name: /^From long ago/ }).click();
  await page.getByRole("button", { name: "Undo: Name" }).click();
  await saved(page);
  await page.goto(`${harness.url}#/`);
  await page.getByRole("link", { name: /^Before/ }).waitFor();
  await page.context().close();
});
