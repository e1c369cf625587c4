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

/**
 * Types a wrong text into one field of each name that is shown, as a hand does: entered, typed over, left.
 * The texts take turns over the fields; another SEED gives each field another of them.
 */
async function typeEverywhere(page: Page): Promise<number> {
  const turn = Number(process.env.SEED ?? 0);
  return page.evaluate(
    async ({ wrong, turn }) => {
      const shown = () =>
        [
          ...document.querySelectorAll<HTMLInputElement | HTMLTextAreaElement>(
            "main :is(input.field-input, textarea.field-input):not([readonly])",
          ),
        ].filter((one) => one.checkVisibility());
      const nameOf = (one: HTMLInputElement | HTMLTextAreaElement) => one.labels?.[0]?.textContent ?? "";
      const drawn = () => new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
      const firsts = [...new Map([...shown()].reverse().map((one) => [nameOf(one), one])).values()];
      for (const [at, first] of firsts.entries()) {
        const text = wrong[(at + turn) % wrong.length] ?? "";
        // A field that was drawn anew is another element of the same name.
        const field = first.isConnected ? first : shown().find((one) => nameOf(one) === nameOf(first));
        if (!field) continue;
        field.focus();
        field.select();
        // Types over what is selected, with the events that a keyboard sends.
        if (text === "") document.execCommand("delete");
        else document.execCommand("insertText", false, text);
        field.blur();
        await drawn();
      }
      return firsts.length;
    },
    { wrong: WRONG, turn },
  );
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
