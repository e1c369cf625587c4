import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, firstVisit, PHONE, saved } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("a job passed on as a link is looked at, put on another shelf, and nothing is sent anywhere", async () => {
  const { page, errors } = await firstVisit(harness);
  await demo(page).click();
  await page.locator("#print-title button").click();
  await page.getByRole("button", { name: "Make a link of the job" }).click();
  const link = await page.getByRole("textbox", { name: "Link of the job" }).inputValue();
  expect(link).toMatch(/#\/shared\/[A-Za-z0-9_-]{200,6000}$/);
  expect(errors).toEqual([]);

  const other = await harness.open({ viewport: PHONE });
  const asked: string[] = [];
  other.page.on("request", (request) => asked.push(request.url()));
  await other.page.goto(link);
  await other.page.getByRole("heading", { name: /^Number 3, Lantern Row/ }).waitFor();
  await other.page.getByRole("button", { name: "Put it on the shelf" }).click();
  await other.page.locator("#rooms").waitFor();
  await saved(other.page);
  const packed = link.split("/shared/")[1] ?? "";
  expect(asked.filter((url) => url.includes(packed.slice(0, 100)) && !url.includes("#"))).toEqual([]);
  expect(other.errors).toEqual([]);
});

test("a link that was cut short says so", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/shared/7VtLb9tGEP4rBE8`);
  await page.getByRole("heading", { name: "This link cannot be read" }).waitFor();
  expect(await page.locator("#main").textContent()).toContain("cut short or changed");
  expect(errors).toEqual([]);
});
