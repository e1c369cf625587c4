import { readFile } from "node:fs/promises";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { DESK, demo, field, firstVisit, openShade, saved, usable, WIDTH } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("deleting a job asks, and what goes waits in the bin with its whole history", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await field(page, WIDTH).fill("34");
  await saved(page);
  await page.goto(`${harness.url}#/`);
  const off = page.getByRole("button", { name: /^Delete/ });
  await off.click();
  await page.getByRole("button", { name: "Keep it" }).click();
  await demo(page).waitFor();

  await off.click();
  await page.getByRole("button", { name: "Delete it", exact: true }).click();
  await demo(page).waitFor({ state: "detached" });
  await page.getByText("30 days left").waitFor();
  // An address that was kept says where the job is.
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.getByText("waits in the bin").waitFor();
  await page.goto(`${harness.url}#/`);
  await page.reload();
  await usable(page);
  await page.getByRole("button", { name: /^Put it back/ }).click();
  await demo(page).waitFor();
  expect(await page.getByRole("heading", { name: "In the bin" }).count()).toBe(0);
  await openShade(page, harness.url);
  expect(await field(page, WIDTH).inputValue()).toBe("34");
  await page.getByRole("button", { name: `Undo: ${WIDTH}` }).click();
  expect(await field(page, WIDTH).inputValue()).toBe("35 3/4");
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a job that is open elsewhere saves, says that it was taken, and can be put back from there", async () => {
  const { page: open } = await firstVisit(harness);
  const shelf = await open.context().newPage();
  await openShade(open, harness.url);
  await field(open, WIDTH).fill("33 1/2");
  await shelf.goto(harness.url);
  await usable(shelf);
  await shelf.getByRole("button", { name: /^Delete/ }).click();
  await shelf.getByText("open in another tab").waitFor();
  await shelf.getByRole("button", { name: "Delete it", exact: true }).click();
  const told = open.getByRole("alert").filter({ hasText: "Deleted." });
  await told.waitFor();
  expect(await field(open, WIDTH).isEditable()).toBe(false);
  expect(await open.getByText("Saved", { exact: true }).count()).toBe(0);
  await told.getByRole("button", { name: "Put it back" }).click();
  await expect.poll(() => field(open, WIDTH).isEditable()).toBe(true);
  expect(await field(open, WIDTH).inputValue()).toBe("33 1/2");
  await demo(shelf).waitFor();
  await open.context().close();
});

test("the whole shelf goes into one file and comes back on another device", async () => {
  const { page } = await firstVisit(harness);
  await page.getByRole("button", { name: /^Copy/ }).click();
  await page.getByRole("link", { name: /\(copy\)/ }).waitFor();
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Back up the shelf" }).click();
  const buffer = await readFile(await (await downloading).path());
  expect(buffer.toString().trim().split("\n")).toHaveLength(3);
  const file = { name: "shelf.jsonl", mimeType: "application/jsonl", buffer };
  const chooser = page.waitForEvent("filechooser");
  await page.getByRole("button", { name: "Open a file" }).click();
  await (await chooser).setFiles(file);
  await page.getByText("2 stood there already").waitFor();
  await page.context().close();

  const { page: other } = await firstVisit(harness);
  const chosen = other.waitForEvent("filechooser");
  await other.getByRole("button", { name: "Open a file" }).click();
  await (await chosen).setFiles(file);
  // The demonstration stands there as it did; the copy is new.
  await expect
    .poll(() => other.locator(".notices").textContent(), { timeout: 180_000 })
    .toContain("1 stood there already");
  await other.getByRole("link", { name: /\(copy\)/ }).waitFor();
  await other.context().close();
});

test("the history goes back to any change at one press, and forward again", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await field(page, WIDTH).fill("34");
  await field(page, "Width at the top").fill("35");
  await page.getByText("History", { exact: true }).click();
  const list = page.getByRole("list", { name: /^History/ });
  await list.getByRole("button", { name: "as it was at first" }).click();
  expect(await field(page, WIDTH).inputValue()).toBe("35 3/4");
  expect(await field(page, "Width at the top").inputValue()).toBe("35 7/8");
  await list.getByRole("button", { name: `${WIDTH} (undone)` }).click();
  expect(await field(page, WIDTH).inputValue()).toBe("34");
  expect(await field(page, "Width at the top").inputValue()).toBe("35 7/8");
  await saved(page);
  await page.context().close();
});

test("a text that cannot be read is never called saved", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await saved(page);
  await field(page, WIDTH).fill("34 or so");
  await page.getByText("1 field not read").waitFor();
  expect(await page.getByText("Saved", { exact: true }).count()).toBe(0);
  await field(page, WIDTH).fill("34");
  await saved(page);
  await page.context().close();
});

test("a link into the demonstration works in a browser that was never here", async () => {
  const { page, errors } = await harness.open({ locale: "en-US", viewport: DESK });
  await page.goto(`${harness.url}#/job/lantern-row/parlour-left`);
  await page.locator(".sheet-svg").waitFor();
  await field(page, WIDTH).fill("34");
  await saved(page);
  expect(errors).toEqual([]);
  await page.context().close();
});
