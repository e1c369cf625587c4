import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, openShade, PHONE, saved, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test.each([
  ["desk", {}],
  ["phone", { viewport: PHONE, hasTouch: true }],
])("a shade that hangs is measured as it is, and its work chosen: %s", async (_name, options) => {
  const { page, errors } = await firstVisit(harness, options);
  await openShade(page, harness.url, "parlour-left");
  const measure = page.locator("#measure");
  if ((await sectionTitle(page, "measure").getAttribute("aria-expanded")) === "false")
    await sectionTitle(page, "measure").click();
  await measure.getByText("hangs already", { exact: true }).click();
  const rows = page.getByRole("textbox", { name: /^Its rows of rings/ });
  await rows.waitFor();
  expect((await rows.inputValue()).split(";").length).toBeGreaterThan(3);

  await rows.fill("4; 12; twelve");
  await rows.press("Enter");
  await expect.poll(() => measure.getByRole("alert").textContent()).toBeTruthy();
  await rows.fill("4; 10; 20; 26; 34; 42");
  await expect.poll(() => page.locator("#measure").textContent()).toMatch(/out of line|even rows/);
  // Rows that slant are entered with their heights at the other edge, a hem that slopes with its fall.
  const right = page.getByRole("textbox", { name: /^The same rows at the right edge/ });
  await right.fill("4; 10; 20; 26; 34; 44");
  await expect.poll(() => page.locator("#shape").textContent()).toMatch(/Rows slant unlike each other/);
  await measure.getByRole("textbox", { name: /^Its hem slopes by/ }).fill("2");
  await measure.getByLabel("Low end of the hem").selectOption("left");
  await right.fill("");
  await expect.poll(() => page.locator("#shape").textContent()).not.toMatch(/Rows slant unlike/);
  await measure.getByRole("textbox", { name: /^Its hem slopes by/ }).fill("");
  await expect.poll(() => measure.getByLabel("Low end of the hem").count()).toBe(0);
  await measure.getByLabel("fit a lock").check();
  expect(await measure.getByLabel("new cords").isChecked()).toBe(true);
  await measure.getByLabel("new cords").uncheck();
  await measure.getByLabel("fit a lock").click();
  // Something must be done to it: the last one stays.
  expect(await measure.getByLabel("fit a lock").isChecked()).toBe(true);
  await measure.getByLabel("Raised now by").selectOption("cleat");

  // Nothing is cut: its sheet and its chapters are those of the work.
  expect(await page.getByRole("tab", { name: "Cutting" }).count()).toBe(0);
  expect(await page.getByRole("tab", { name: "Lock" }).count()).toBe(1);
  await saved(page);

  await measure.getByText("is to be made", { exact: true }).click();
  await expect.poll(() => page.getByRole("tab", { name: "Cutting" }).count()).toBe(1);
  expect(errors).toEqual([]);
});

test("a cleat alone is chosen, and the drawing, the sentence and the review follow", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url, "parlour-left");
  if ((await sectionTitle(page, "lift").getAttribute("aria-expanded")) === "false")
    await sectionTitle(page, "lift").click();
  const lift = page.locator("#lift");
  await lift.getByLabel("Raised by").selectOption("cleat");
  await expect.poll(() => lift.locator(".chapter-sentence").textContent()).toMatch(/down to a cleat/);
  await expect.poll(() => lift.textContent()).toMatch(/There is no lock/);
  await page.getByRole("tab", { name: "Cleat" }).click();
  await expect.poll(() => page.locator(".sheet-svg").textContent()).toMatch(/last eye/);
  expect(errors).toEqual([]);
});
