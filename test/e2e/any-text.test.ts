import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { openJob } from "../../src/job/index.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, openAll, openShade } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** A day that no calendar has, numbers out of reach, nothing at all. */
const WRONG = ["2026-13-01", "999999999", ""];

/** Types wrong texts into one field of each name that is shown. */
async function typeEverywhere(page: Page): Promise<number> {
  const fields = page.locator("main :is(input.field-input, textarea.field-input):not([readonly]):visible");
  const names = await fields.evaluateAll((all) =>
    all.map((one) => (one as HTMLInputElement).labels?.[0]?.textContent ?? ""),
  );
  const firsts = [...names.keys()].filter((at) => names.indexOf(names[at] ?? "") === at);
  // From the last to the first: what goes from the page stands after the field that took it away.
  for (const at of firsts.reverse()) for (const text of WRONG) await fields.nth(at).fill(text);
  return firsts.length;
}

/** The job as the browser keeps it. */
function stored(page: Page, id: string): Promise<unknown> {
  return page.evaluate(
    (key) =>
      new Promise<unknown>((resolve, reject) => {
        const open = indexedDB.open("shadewright");
        open.onerror = () => reject(open.error);
        open.onsuccess = () => {
          const got = open.result.transaction("jobs").objectStore("jobs").get(key);
          got.onerror = () => reject(got.error);
          got.onsuccess = () => resolve(got.result?.job);
        };
      }),
    id,
  );
}

async function reopened(page: Page): Promise<string[]> {
  await page.goto(`${harness.url}#/`);
  // The job is let go of and what waits of it is written.
  await page.waitForTimeout(5000);
  const opened = openJob(await stored(page, "lantern-row"));
  return opened.ok ? [] : opened.issues.map(({ field, given }) => `${field}: ${given}`);
}

test("whatever is typed into any field of a job, the job opens again", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator("h1").waitFor();
  await openAll(page);
  expect(await typeEverywhere(page)).toBeGreaterThan(40);
  expect(await reopened(page)).toEqual([]);
  expect(errors).toEqual([]);
});

test("whatever is typed into any field of a shade, the job opens again", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await openAll(page);
  expect(await typeEverywhere(page)).toBeGreaterThan(40);
  expect(await reopened(page)).toEqual([]);
  expect(errors).toEqual([]);
});
