import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { DESK, field, firstVisit, openShade, saved, usable, WIDTH } from "./planner.ts";
import { keepTyping } from "./typing.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** What is written in the page's database, with no help of the planner's code. */
function stored(page: Page): Promise<{ revision: number; bottomMm: number; past: number }> {
  return page.evaluate(
    () =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open("shadewright");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const request = opening.result.transaction("jobs").objectStore("jobs").get("lantern-row");
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {
            const { revision, job, history } = request.result;
            opening.result.close();
            resolve({
              revision,
              bottomMm: job.rooms[0].windows[0].opening.widthsMm[2],
              past: history.past.length,
            });
          };
        };
      }),
  );
}

test("what was acknowledged outlives a tab that is killed in the middle of an edit", async () => {
  const { page } = await firstVisit(harness);
  const context = page.context();
  await openShade(page, harness.url);
  const acknowledged = await keepTyping(page);
  await expect.poll(() => acknowledged.length, { timeout: 180_000 }).toBeGreaterThan(5);
  const crashed = page.waitForEvent("crash");
  const client = await context.newCDPSession(page);
  client.send("Page.crash").catch(() => {});
  await crashed;

  const again = await context.newPage();
  await openShade(again, harness.url);
  expect((await stored(again)).bottomMm).toBeGreaterThanOrEqual(acknowledged.at(-1) ?? Number.NaN);
  await expect.poll(() => field(again, WIDTH).isEditable()).toBe(true);
  await context.close();
});

test("undo goes on after the page was closed", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await field(page, WIDTH).fill("34");
  await field(page, WIDTH).blur();
  await saved(page);
  await page.reload();
  await page.getByRole("button", { name: "Undo: Width at the bottom" }).click();
  expect(await field(page, WIDTH).inputValue()).toBe("35 3/4");
  await page.getByRole("button", { name: "Redo: Width at the bottom" }).click();
  expect(await field(page, WIDTH).inputValue()).toBe("34");
  await page.context().close();
});

test("a full device is told, nothing is lost, and the job leaves as a file", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.evaluate(() => {
    const put = IDBObjectStore.prototype.put;
    Object.assign(globalThis, { isFull: true });
    IDBObjectStore.prototype.put = function (...given) {
      if ("isFull" in globalThis) throw new DOMException("The disk is full.", "QuotaExceededError");
      return put.apply(this, given as Parameters<typeof put>);
    };
  });
  await field(page, WIDTH).fill("33 1/8");
  const alert = page.getByRole("alert").filter({ hasText: "no room left" });
  await alert.waitFor();
  expect(await page.getByTestId("save-state").textContent()).toBe("Not saved");
  expect(await field(page, WIDTH).inputValue()).toBe("33 1/8");
  const bottomMm = 33.125 * 25.4;
  expect((await stored(page)).bottomMm).not.toBeCloseTo(bottomMm, 3);

  await page.evaluate(() => Reflect.deleteProperty(window, "showSaveFilePicker"));
  const downloading = page.waitForEvent("download");
  await alert.getByRole("button", { name: "Save the job as a file" }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toBe("Number-3-Lantern-Row.shadewright.json");
  const file = JSON.parse(await readFile(await download.path(), "utf8"));
  expect(file.rooms[0].windows[0].opening.widthsMm[2]).toBeCloseTo(bottomMm, 6);

  // To the shelf and back: it is still all here, and is written once there is room.
  await page.goto(`${harness.url}#/`);
  await page.getByRole("alert").getByRole("link", { name: "Open it again" }).click();
  await page.goto(`${harness.url}#/job/lantern-row/parlour-left`);
  expect(await field(page, WIDTH).inputValue()).toBe("33 1/8");
  await page.evaluate(() => Reflect.deleteProperty(globalThis, "isFull"));
  await page.getByRole("button", { name: "Try again" }).click();
  await saved(page);
  expect((await stored(page)).bottomMm).toBeCloseTo(bottomMm, 6);
  await page.context().close();
});

/** Letters that no database packs into less room than they are. */
function noise(seed: number, length: number): string {
  let state = seed + 1;
  return Array.from({ length }, () => {
    // Park and Miller, Communications of the ACM 31 (1988): the minimal standard generator.
    state = (state * 48_271) % 2_147_483_647;
    return String.fromCharCode(97 + (state % 26));
  }).join("");
}

test("the browser's own quota, once used up, is told in the same way", async () => {
  // Kept files of the planner would count against the quota as well.
  const { page } = await harness.open({ locale: "en-US", viewport: DESK, serviceWorkers: "block" });
  const client = await page.context().newCDPSession(page);
  const { origin } = new URL(harness.url);
  await client.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: 400_000 });
  await page.goto(harness.url);
  await usable(page);
  await openShade(page, harness.url);
  const note = page.getByRole("textbox", { name: "Note", exact: true }).last();
  const full = page.getByRole("alert").filter({ hasText: "no room left" });
  let last = "";
  for (let n = 0; n < 80 && (await full.count()) === 0; n++) {
    last = noise(n, 3600);
    await note.fill(last);
    await note.blur();
  }
  await full.waitFor();
  expect(await note.inputValue()).toBe(last);
  expect(await page.getByTestId("save-state").textContent()).toBe("Not saved");
  await page.context().close();
});

test("a job open in two tabs is written by one of them, and no acknowledged edit is lost", async () => {
  const { page: first } = await firstVisit(harness);
  const second = await first.context().newPage();
  await openShade(first, harness.url);
  await openShade(second, harness.url);
  const notice = second.getByRole("status").filter({ hasText: "Open in another tab" });
  await notice.waitFor();
  expect(await field(second, WIDTH).isEditable()).toBe(false);

  await field(first, WIDTH).fill("35 1/2");
  await saved(first);
  await expect.poll(() => field(second, WIDTH).inputValue()).toBe("35 1/2");

  await notice.getByRole("button", { name: "Work here instead" }).click();
  await expect.poll(() => field(second, WIDTH).isEditable()).toBe(true);
  await first.getByRole("status").filter({ hasText: "Open in another tab" }).waitFor();
  expect(await field(first, WIDTH).isEditable()).toBe(false);

  await field(second, "Width at the top").fill("36");
  await saved(second);
  await expect.poll(() => field(first, "Width at the top").inputValue()).toBe("36");
  expect((await stored(second)).bottomMm).toBeCloseTo(35.5 * 25.4, 6);
  await second.getByRole("button", { name: "Undo: Width at the top" }).click();
  await second.getByRole("button", { name: "Undo: Width at the bottom" }).click();
  expect(await field(second, WIDTH).inputValue()).toBe("35 3/4");
  await first.context().close();
});

test("a tab that hangs has its job taken over, and overwrites nothing when it wakes", async () => {
  const { page: first } = await firstVisit(harness);
  const second = await first.context().newPage();
  await openShade(first, harness.url);
  await field(first, WIDTH).fill("35 1/2");
  await saved(first);
  await openShade(second, harness.url);
  // The first tab answers nobody for a while, with an edit that it has not yet written.
  const hanging = first.evaluate(() => {
    const until = performance.now() + 4000;
    while (performance.now() < until);
  });
  await second.getByRole("button", { name: "Work here instead" }).click();
  await expect.poll(() => field(second, WIDTH).isEditable(), { timeout: 180_000 }).toBe(true);
  await field(second, WIDTH).fill("34");
  await saved(second);
  await hanging;
  await first.getByRole("status").filter({ hasText: "Open in another tab" }).waitFor();
  await expect.poll(() => field(first, WIDTH).inputValue()).toBe("34");
  expect((await stored(second)).bottomMm).toBeCloseTo(34 * 25.4, 6);
  await first.context().close();
});

test("a screen that fails keeps the job and offers it as a file", async () => {
  const { page } = await firstVisit(harness);
  await page.evaluate(() => Object.assign(globalThis, { ResizeObserver: undefined }));
  await page.goto(`${harness.url}#/job/lantern-row/parlour-left`);
  await page.getByRole("heading", { name: "This page could not be drawn" }).waitFor();
  await page.evaluate(() => Reflect.deleteProperty(window, "showSaveFilePicker"));
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save the job as a file" }).click();
  const file = JSON.parse(await readFile(await (await downloading).path(), "utf8"));
  expect(file.name).toBe("Number 3, Lantern Row");
  await page.context().close();
});

test("a job on the shelf that cannot be read is kept as it is", async () => {
  const { page } = await firstVisit(harness);
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open("shadewright");
        opening.onsuccess = () => {
          const jobs = opening.result.transaction("jobs", "readwrite").objectStore("jobs");
          const request = jobs.get("lantern-row");
          request.onsuccess = () => {
            request.result.job.rooms[0].windows[0].opening.widthsMm = ["wide"];
            jobs.put(request.result).onsuccess = () => {
              opening.result.close();
              resolve();
            };
          };
          request.onerror = () => reject(request.error);
        };
      }),
  );
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.getByRole("heading", { name: "This job cannot be read" }).waitFor();
  await page.getByText("rooms[0].windows[0].opening.widthsMm[0]").waitFor();
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Keep it as a file" }).click();
  const file = JSON.parse(await readFile(await (await downloading).path(), "utf8"));
  expect(file.rooms[0].windows[0].opening.widthsMm).toEqual(["wide"]);
  await page.context().close();
});
