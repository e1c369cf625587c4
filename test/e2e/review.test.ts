import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { drawing, field, firstVisit, openShade, saved } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("the review stands on the shade's page and a way out is pressed from the keyboard", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  const review = page.locator("#safety");
  await expect.poll(() => review.textContent()).toMatch(/fails (?:a rule|\d+ rules) on cords/);

  const spring = review.getByRole("button", { name: /^Raise it by a spring/ }).first();
  await spring.focus();
  await page.keyboard.press("Enter");
  await expect.poll(() => review.textContent()).not.toMatch(/fails (?:a rule|\d+ rules) on cords/);
  await expect.poll(() => page.locator("#lift").textContent()).toMatch(/spool/);
  await page.keyboard.press("Control+z");
  await expect.poll(() => review.textContent()).toMatch(/fails (?:a rule|\d+ rules) on cords/);

  // The same cause on the other shades of the job, answered from here by one press.
  await page.locator("#safety-title button").click();
  const front = page.locator('#safety [data-card="safety.cords-front"]').first();
  await front.getByRole("button", { name: "Do it for all shades?" }).click();
  const all = front.getByRole("button", { name: /^Do it for all \d+: raise it by/ }).first();
  await all.waitFor();
  expect(await front.locator(".finding-elsewhere").textContent()).toMatch(/\d+ other shades? with it: /);
  await all.click();
  await expect.poll(() => page.locator('[data-card="safety.cords-front"]').count()).toBe(0);
  await openShade(page, harness.url, "parlour-right");
  expect(await page.locator('[data-card="safety.cords-front"]').count()).toBe(0);
  await page.keyboard.press("Control+z");
  await page.locator('[data-card="safety.cords-front"]').first().waitFor();
  await saved(page);
  expect(errors).toEqual([]);
});

test("one card for one cause over all shades, pressed once for all of them", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  const findings = page.locator("#findings");
  await page.locator("#findings-title button").click();
  const front = findings.locator('[data-card="safety.cords-front"]');
  const all = front.getByRole("button", { name: /^Do it for all \d+: raise it by/ });
  await all.first().waitFor();
  expect(await front.locator(".finding-text").first().textContent()).not.toMatch(/[A-Z]{2}-[A-Z]/);
  expect(await front.locator(".finding").count()).toBe(0);
  await front.locator("summary").click();
  expect(await front.locator(".finding").count()).toBeGreaterThan(1);
  await all.first().click();
  await expect.poll(() => findings.locator('[data-card="safety.cords-front"]').count()).toBe(0);
  await page.keyboard.press("Control+z");
  await front.waitFor();
  await saved(page);
  expect(errors).toEqual([]);
});

test("what to do stands before the rules and their codes", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.locator("#safety-title button").click();
  const safety = page.locator("#safety");
  await safety.locator(".rule").first().waitFor();
  const top = async (selector: string) =>
    (await safety.locator(selector).first().boundingBox())?.y ?? Number.NaN;
  expect(await top("[data-card]")).toBeLessThan(await top(".rule"));
});

test("a rule draws the state in which it is worst", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.locator("#safety-title button").click();
  const before = await drawing(page);
  await page
    .locator("#safety")
    .getByRole("button", { name: /Show worst position: raised/ })
    .first()
    .click();
  await expect.poll(() => drawing(page)).not.toEqual(before);
  expect(await page.getByRole("tab", { name: "Side" }).getAttribute("aria-selected")).toBe("true");
});

test("place and purpose are asked at the first shade, and decide lift and stamp", async () => {
  const { page } = await firstVisit(harness);
  await field(page, "Width").fill("36");
  await field(page, "Length").fill("60");
  await page.getByRole("button", { name: "Draw my shade" }).click();
  const ask = page.locator(".ask-place");
  await ask.waitFor();
  expect(await page.locator("#lift").textContent()).toMatch(/spool/);
  await page.locator("#lift-title button").click();
  const lock = page.locator("#lift").getByRole("button", { name: "Use a cord lock" });
  await lock.click();
  await ask.getByLabel("Where it will hang").selectOption({ label: "Canada" });
  await page.locator(".ask-place").getByLabel("Use", { exact: true }).selectOption({ label: "For sale" });
  await page.locator(".stamp").waitFor();
  expect(await page.locator(".stamp").textContent()).toMatch(/fail \d+ rules of Canada/);
  await expect.poll(() => page.locator(".ask-place").count()).toBe(0);
});
