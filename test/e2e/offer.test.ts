import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, openAll } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(async () => {
  await harness.close();
});

test("a price typed in the shopping list goes into the price that the client is asked for", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator("#cost").waitFor();
  await openAll(page);
  const cleat = page.getByRole("textbox", { name: /^Price of Cleat with two screws/ }).first();
  await cleat.waitFor({ timeout: 180_000 });
  const row = page.locator("#cost tr", { has: cleat });
  await cleat.fill("");
  await cleat.press("Enter");
  await row.getByText("no price").waitFor();
  await cleat.fill("4.50");
  await cleat.press("Enter");
  await row.getByText(/^\d+\.\d\d/).waitFor();
  expect(await row.textContent()).not.toContain("no price");

  const told = page.locator("#offer");
  await told.getByText(/The price is/).waitFor();
  const price = async () => Number(/The price is ([\d.]+)/.exec((await told.textContent()) ?? "")?.[1]);
  const before = await price();
  const markUp = page.getByRole("textbox", { name: /^Mark-up/ });
  await markUp.fill("25");
  await markUp.press("Enter");
  await expect.poll(price).toBeCloseTo(before * 1.25, 1);
  expect(errors).toEqual([]);
  await page.context().close();
});
