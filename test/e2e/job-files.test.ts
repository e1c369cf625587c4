import { readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openJobText } from "../../src/job/index.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, field, firstVisit, openShade, saved, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

async function openFile(page: Page, name: string, text: string): Promise<void> {
  await page
    .locator('input[type="file"]')
    .setInputFiles({ name, mimeType: "application/json", buffer: Buffer.from(text) });
}

/** Where the browser would ask for a place to save, the test takes the download. */
function withoutPicker(page: Page): Promise<boolean> {
  return page.evaluate(() => Reflect.deleteProperty(window, "showSaveFilePicker"));
}

test("a job saved as a file opens beside the one on the shelf, and both are kept", async () => {
  const { page } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator(".elevation-window").first().waitFor();
  await withoutPicker(page);
  const downloading = page.waitForEvent("download");
  await sectionTitle(page, "print").click();
  await page.getByRole("button", { name: "Save the job as a file" }).click();
  const text = await readFile(await (await downloading).path(), "utf8");
  const opened = openJobText(text);
  expect(opened.ok && opened.job.name).toBe("Number 3, Lantern Row");

  await field(page, "Job").fill("Number 3, changed since");
  await saved(page);
  await page.goto(`${harness.url}#/`);
  await openFile(page, "row.shadewright.json", text);
  await page.getByText("stands beside it as a copy").waitFor();
  expect(await field(page, "Job").inputValue()).toBe("Number 3, Lantern Row");
  await page.goto(`${harness.url}#/`);
  await page.getByRole("link", { name: /^Number 3, changed since/ }).waitFor();
  await page.getByRole("link", { name: /^Number 3, Lantern Row/ }).waitFor();
  await page.context().close();
});

test("a file dropped on the page is opened", async () => {
  const { page } = await firstVisit(harness);
  const text = await readFile("test/documents/job-v1.json", "utf8");
  const transfer = await page.evaluateHandle((content) => {
    const data = new DataTransfer();
    data.items.add(new File([content], "mill.json", { type: "application/json" }));
    return data;
  }, text);
  await page.dispatchEvent("main", "dragover", { dataTransfer: transfer });
  await page.getByText("Drop the job file to open it").waitFor();
  await page.dispatchEvent("main", "drop", { dataTransfer: transfer });
  await page.locator(".elevation-window").first().waitFor();
  expect(await field(page, "Job").inputValue()).toBe(JSON.parse(text).name);
  await page.context().close();
});

const MARKUP = `</title><img src=x onerror="globalThis.ran=1"><script>globalThis.ran=1</script>`;

function hostileJob(): string {
  const windows = [
    {
      id: "w",
      name: MARKUP,
      opening: { widthsMm: [900], heightsMm: [1400], sillAboveFloorMm: 800 },
      shade: { face: "c", note: MARKUP, lining: null },
    },
  ];
  return JSON.stringify({
    format: "shadewright-job",
    version: 1,
    id: "hostile",
    name: MARKUP,
    client: MARKUP,
    rooms: [{ id: "r", name: MARKUP, windows }],
    cloths: [{ id: "c", name: MARKUP, usableWidthMm: 700, massGsm: 200 }],
  });
}

test("names are text, on every screen and in file names", async () => {
  const { page, errors } = await firstVisit(harness);
  await openFile(page, "hostile.json", hostileJob());
  await page.locator(".elevation-window").first().click();
  await page.locator(".sheet-svg").waitFor();
  for (const tab of await page.getByRole("tab").all()) await tab.click();
  await page.goto(`${harness.url}#/job/hostile/w/bench`);
  await page.locator(".bench-step").waitFor();
  await page.goto(`${harness.url}#/`);
  await page.getByRole("link", { name: /onerror/ }).waitFor();
  await page.locator(".shelf-elevation").nth(1).waitFor();
  expect(await page.evaluate(() => "ran" in globalThis)).toBe(false);
  expect(await page.locator("main img, main script, svg script").count()).toBe(0);
  expect(errors).toEqual([]);
  await page.context().close();
});

describe("a file that is not a job is refused in words, and the job on the table stays", () => {
  const good = () => JSON.parse(hostileJob());
  test.each<[string, string, RegExp]>([
    ["truncated", hostileJob().slice(0, 200), /cut short/],
    ["of another kind", JSON.stringify({ hello: "world" }), /format/],
    ["from the future", JSON.stringify({ ...good(), version: 99 }), /newer Shadewright/],
    ["nested too deep", `${"[".repeat(100_000)}${"]".repeat(100_000)}`, /nested/],
    ["with a huge number", hostileJob().replace("900", "1e999"), /widthsMm/],
    ["with a wrong type", hostileJob().replace("[900]", '"wide"'), /widthsMm/],
    ["with unknown fields", JSON.stringify({ ...good(), __proto__x: 1 }), /no field called/],
    ["empty", "", /nothing/],
    ["not text at all", "\u0000\u0001\u0002", /not JSON/],
  ])("%s", async (_, text, said) => {
    const { page, errors } = await firstVisit(harness);
    await demo(page).waitFor();
    await openFile(page, "broken.json", text);
    const alert = page.getByRole("alert").filter({ hasText: "was not opened" });
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(said);
    expect(errors).toEqual([]);
    await openShade(page, harness.url);
    expect(await field(page, "Width at the bottom").inputValue()).toBe("35 3/4");
    await page.context().close();
  });

  test("of eighty million bytes", async () => {
    const { page, errors } = await firstVisit(harness);
    const file = join(tmpdir(), `shadewright-large-${process.pid}.json`);
    await writeFile(file, `{"format":"shadewright-job","note":"${"x".repeat(80_000_000)}"}`);
    await page.locator('input[type="file"]').setInputFiles(file);
    const alert = page.getByRole("alert").filter({ hasText: "was not opened" });
    await alert.waitFor();
    expect(await alert.textContent()).toMatch(/million/);
    expect(errors).toEqual([]);
    await page.context().close();
  });
});
