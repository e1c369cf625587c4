import { afterAll, beforeAll, expect, test } from "vitest";
import { violations } from "./axe.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, PHONE, saved, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test.each([
  ["desk", {}],
  ["phone", { viewport: PHONE, hasTouch: true, isMobile: true }],
])("rows of a spreadsheet become windows in one change: %s", async (_name, options) => {
  const { page, errors } = await firstVisit(harness, options);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await sectionTitle(page, "rooms").click();
  const kitchen = page.locator(".room-block").nth(1);
  await kitchen.locator("summary", { hasText: "Several windows at once" }).click();
  const cell = (name: string) => kitchen.getByRole("textbox", { name });
  await cell("Name, row 1").fill("By the door");
  await cell("Width, row 1").fill("24 1/2");
  await cell("Name, row 2").evaluate((input) => {
    const data = new DataTransfer();
    data.setData("text/plain", 'Pantry\t"20 3/8"""\t40\r\nLarder\t18\t3\' 2"\r\n');
    input.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
    );
  });
  await kitchen.getByRole("button", { name: "Add 3 windows" }).click();
  // Nothing is added while a cell cannot be read, and the cell is named.
  expect(await kitchen.getByRole("alert").textContent()).toMatch(/^Row 1, length:/);
  expect(await violations(page)).toEqual([]);
  await cell("Length, row 1").fill("48");
  await kitchen.getByRole("button", { name: "Add 3 windows" }).click();
  await kitchen.getByText("3 windows added.").waitFor();
  expect(await kitchen.locator(".window-row").count()).toBe(4);
  expect(await kitchen.locator(".window-row", { hasText: "Larder" }).textContent()).toMatch(/18.in × 38.in/);
  await saved(page);
  await page.getByRole("button", { name: "Undo: Add 3 windows" }).click();
  await expect.poll(() => kitchen.locator(".window-row").count()).toBe(1);
  expect(errors).toEqual([]);
  await page.context().close();
});
