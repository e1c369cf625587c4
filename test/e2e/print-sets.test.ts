import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { DESK, firstVisit, pdfText, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("what to print is ticked set by set or chosen by its reader, and the pages are told before they are made", async () => {
  const { page, errors } = await firstVisit(harness, { viewport: DESK });
  await page.goto(`${harness.url}#/job/lantern-row/kitchen-sink`);
  await sectionTitle(page, "make").click();
  await page.getByText("What to print", { exact: true }).first().click();
  const panel = page.getByRole("group", { name: "What to print" });
  const told = panel.getByRole("status");
  const pages = async () => {
    await told.filter({ hasText: /In all: \d+ pages?/ }).waitFor({ timeout: 180_000 });
    return Number(/\d+/.exec((await told.textContent()) ?? "")?.[0]);
  };
  const made = async () => {
    const downloading = page.waitForEvent("download");
    await page.getByRole("button", { name: "Download this shade’s workbook" }).click();
    return pdfText(await downloading);
  };

  const usual = await pages();
  expect(usual).toBeGreaterThan(12);
  const reader = page.getByRole("combobox", { name: "For", exact: true });
  await reader.selectOption({ label: "The client" });
  expect(await pages()).toBe(2);
  const client = await made();
  expect(client.pages).toBe(2);
  expect(client.text).toContain("for the client");

  await panel.getByRole("checkbox", { name: /Client sheet/ }).uncheck();
  expect(await page.getByRole("button", { name: "Download this shade’s workbook" }).isDisabled()).toBe(true);
  await panel.getByRole("checkbox", { name: /Table sheets/ }).check();
  const counted = await pages();
  expect((await made()).pages).toBe(counted);

  expect(await reader.evaluate((one) => (one as HTMLSelectElement).selectedOptions[0]?.label)).toBe(
    "What I checked",
  );
  await reader.selectOption({ label: "The usual" });
  expect(await pages()).toBe(usual);

  // What is read from the cloth as it hangs stands on the sheet of findings, as it does on the page.
  for (const set of [/Table sheets/, /Step by step/, /Child-safety tag/, /^Shopping/])
    await panel.getByRole("checkbox", { name: set }).uncheck();
  await panel.getByRole("checkbox", { name: /^Findings/ }).check();
  expect((await made()).text.replaceAll(/\s+/g, " ")).toContain("As the fabric comes to rest, the shade");
  expect(errors).toEqual([]);
  await page.context().close();
});
