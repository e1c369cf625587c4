import { afterAll, beforeAll, expect, test } from "vitest";
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
