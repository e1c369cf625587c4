import { afterAll, beforeAll, expect, test } from "vitest";
import { newJob } from "../../src/job/index.ts";
import { violations } from "./axe.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { field, firstVisit, saved, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("rates kept for this device begin a new job; an older job keeps its own and says what is other", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await sectionTitle(page, "rates").click();
  await field(page, "An hour of work").fill("48");
  const rates = page.locator("#rates");
  await rates.getByRole("button", { name: "Begin new jobs with these" }).click();
  await rates.getByText("New jobs on this device begin with these.").waitFor();
  await field(page, "An hour of work").fill("52");
  await rates.getByText(/begin otherwise: an hour of work\./).waitFor();
  expect(await violations(page)).toEqual([]);
  await saved(page);

  await page.goto(`${harness.url}#/`);
  await page.getByRole("textbox", { name: "Width" }).fill("30");
  await page.getByRole("textbox", { name: "Length" }).fill("50");
  await page.getByRole("button", { name: "Draw my shade" }).click();
  await page.locator(".sheet-svg").waitFor();
  await page.getByRole("link", { name: "My windows" }).first().click();
  await sectionTitle(page, "rates").click();
  expect(await field(page, "An hour of work").inputValue()).toBe("48");

  await page.goto(`${harness.url}#/job/lantern-row`);
  expect(await field(page, "An hour of work").inputValue()).toBe("52");
  await rates.getByRole("button", { name: "Take this device’s here" }).click();
  expect(await field(page, "An hour of work").inputValue()).toBe("48");
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a remnant laid into the shop of this device goes to one job alone, with its cloth", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await sectionTitle(page, "stock").click();
  const stock = page.locator("#stock");
  const cards = stock
    .locator("div:has(> h3)")
    .filter({ has: page.getByRole("heading", { name: "Bolts and remnants" }) })
    .locator(".part-card");
  await cards.first().waitFor();
  const before = await cards.count();
  await stock.getByRole("button", { name: /^Add a piece of/ }).click();
  await expect.poll(() => cards.count()).toBe(before + 1);
  await cards.last().getByRole("textbox", { name: "Name" }).fill("Blue end");
  await cards.last().getByRole("button", { name: "Lay it into this device’s shop" }).click();
  await cards.last().getByText("Of this device’s shop").waitFor();
  await saved(page);

  // Another job sees that it is taken; once it is let go, it can have it.
  const other = { ...newJob({ id: "other", name: "Other job, demo", system: "imperial" }) };
  await page.goto(`${harness.url}#/`);
  await page.locator('input[type="file"]').setInputFiles({
    name: "other.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(other)),
  });
  await sectionTitle(page, "stock").click();
  await stock.getByText("Number 3, Lantern Row has it").waitFor();
  expect(await stock.getByRole("button", { name: /^Take for this job/ }).count()).toBe(0);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await cards.last().getByRole("button", { name: "Take out of stock" }).click();
  await stock.getByRole("button", { name: /^Take for this job ?: Blue end/ }).waitFor();
  await saved(page);
  await page.goto(`${harness.url}#/job/other`);
  await stock.getByRole("button", { name: /^Take for this job ?: Blue end/ }).click();
  await expect.poll(() => cards.first().getByRole("textbox", { name: "Name" }).inputValue()).toBe("Blue end");
  expect(await violations(page)).toEqual([]);
  await saved(page);
  // Undone there, it lies free; done again, it is taken again.
  await page.keyboard.press("ControlOrMeta+z");
  await stock.getByRole("button", { name: /^Take for this job ?: Blue end/ }).waitFor();
  await page.keyboard.press("ControlOrMeta+Shift+z");
  await expect.poll(() => cards.count()).toBe(1);
  expect(errors).toEqual([]);
  await page.context().close();
});
