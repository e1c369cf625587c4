import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { field, firstVisit, openShade, PHONE, pdfText, saved } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const flat = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ").replace(/\s+/g, " ");

/** Lays out a lock that takes cord of 1.2 to 1.6 mm, eight at most, and a cord that is measured by its turns. */
async function layOut(page: Page): Promise<void> {
  await page.getByRole("link", { name: "Parts bench" }).click();
  await page.locator("#bench-locks > summary").click();
  await page.getByRole("button", { name: "Lay out a lock" }).click();
  const lock = page.locator("#bench-locks .part-card");
  const type = (label: string | RegExp, text: string) =>
    lock.getByRole("textbox", { name: label }).fill(text);
  await type(/^Name/, "Brass lock");
  await type(/^Slots/, "4");
  await type(/^Cords at most/, "8");
  await type(/^Thinnest cord/, "1.2");
  await type(/^Thickest cord/, "1.6");
  await type(/^Housing along the board/, "33");
  await type(/^Housing across the board/, "28");
  await type(/^Housing height/, "23");
  await type(/^Supplier/, "A shop");
  await lock.getByRole("combobox", { name: "Slots: how it is known" }).selectOption("measured");
  await page.locator("#bench-cords > summary").click();
  await page.getByRole("button", { name: "Lay out a cord" }).click();
  const cord = page.locator("#bench-cords .part-card");
  await cord.getByRole("textbox", { name: /^Name/ }).fill("White braid");
}

test("a part on the bench begins empty, is kept, measured by a test, and serves a new job with a copy", async () => {
  const { page, errors } = await firstVisit(harness);
  await layOut(page);
  const cord = page.locator("#bench-cords .part-card");
  expect(flat(await cord.textContent())).toMatch(/Not planned with yet\. Not known: diameter\./);
  // Said in one way, the other is not asked.
  expect(await page.getByRole("textbox", { name: /^Divider wires/ }).count()).toBe(0);
  await cord.getByText("Diameter of a cord").click();
  await field(page, "Turns").fill("20");
  await field(page, "Width of all turns").fill("28");
  await expect
    .poll(async () => flat(await cord.textContent()))
    .toMatch(/Kept with the part: diameter 1\.4 mm\./);
  expect(flat(await cord.textContent())).not.toMatch(/Not planned with yet/);
  const fit = page.locator(".fit-table");
  await expect.poll(async () => flat(await fit.textContent())).toMatch(/Brass lockWhite braid, 1\.4 mmfits/);
  await field(page, "Cords").fill("9");
  await expect
    .poll(async () => flat(await fit.textContent()))
    .toMatch(/too manyIt takes at most 8 cords; you have 9/);

  // Kept on the device, and copied by a job that is begun now.
  await page.reload();
  await page.locator("#bench-cords > summary").click();
  await page.getByRole("article", { name: "White braid" }).waitFor();
  await page.goto(harness.url);
  await field(page, "Width").fill("36");
  await field(page, "Length").fill("60");
  await page.getByRole("button", { name: "Draw my shade" }).click();
  await page.locator(".sheet-svg").waitFor();
  await page.locator("#lift-title button").click();
  const lift = page.locator("#lift");
  await lift.getByRole("combobox", { name: "Raised by" }).selectOption("cord-lock");
  await expect.poll(async () => flat(await lift.textContent())).toMatch(/Brass lock on the/);
  await lift.getByText("Which lock goes with which cord?").click();
  await expect
    .poll(async () => flat(await lift.locator(".fit-table").textContent()))
    .toMatch(/Brass lockWhite braid, 1\.4 mmfits/);
  await saved(page);
  expect(errors).toEqual([]);
});

test("a job keeps its copy, says that the bench's has changed, and takes it when pressed", async () => {
  const { page, errors } = await firstVisit(harness, { viewport: PHONE, colorScheme: "dark" });
  await layOut(page);
  // Three cords by a lock, and the page as wide as the phone.
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  await openShade(page, harness.url);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator("#hardware-title button").click();
  const hardware = page.locator("#hardware");
  await hardware.getByRole("button", { name: /^Take a copy/ }).click();
  await expect.poll(() => hardware.getByRole("button", { name: /^Take a copy/ }).count()).toBe(0);
  await saved(page);
  await page.goto(`${harness.url}#/parts`);
  await page.locator("#bench-locks > summary").click();
  await page
    .locator("#bench-locks")
    .getByRole("textbox", { name: /^Cords at most/ })
    .fill("6");
  await page.goto(`${harness.url}#/job/lantern-row`);
  const title = page.locator("#hardware-title button");
  await title.waitFor();
  // A section stays as it was left.
  if ((await title.getAttribute("aria-expanded")) === "false") await title.click();
  const changed = hardware.getByRole("list", { name: "Changed on the bench" });
  await expect
    .poll(async () => flat(await changed.textContent()))
    .toMatch(/“Brass lock” is another on the bench.*cords at most/);
  await changed.getByRole("button", { name: /^Take that of the bench/ }).click();
  await expect.poll(() => changed.count()).toBe(0);
  await saved(page);
  expect(errors).toEqual([]);
});

test("the bench is a file, and the sheet for its tests one page", async () => {
  const { page, errors } = await firstVisit(harness);
  await layOut(page);
  const saving = page.waitForEvent("download");
  await page.getByRole("button", { name: "Save as a parts file" }).click();
  const file = JSON.parse(await readFile(await (await saving).path(), "utf8"));
  expect(file).toMatchObject({
    format: "shadewright-parts",
    version: 1,
    locks: [{ name: "Brass lock", slots: 4 }],
  });
  expect(file.locks[0].known).toMatchObject({ slots: "measured", cordsMax: "stated" });
  const input = page.getByLabel("Parts file", { exact: true });
  const open = (parts: object) =>
    input.setInputFiles({
      name: "parts.json",
      mimeType: "application/json",
      buffer: Buffer.from(JSON.stringify({ format: "shadewright-parts", version: 1, ...parts })),
    });
  await open({ eyes: [{ id: "e", name: "Brass eye", outsideDiameterMm: 14 }] });
  await page.getByText("1 part of parts.json lies on the bench.").waitFor();
  await open({ eyes: [{ id: "e", name: "Brass eye", outsideDiameterMm: 9999 }] });
  await page.getByText(/^eyes\[0\]\.outsideDiameterMm: 9999\. Wanted: at most 500/).waitFor();
  const printing = page.waitForEvent("download");
  await page.getByRole("button", { name: "Print the sheet for the tests" }).click();
  const { text, pages } = await pdfText(await printing);
  expect(pages).toBe(1);
  expect(text).toContain("Five tests at the bench");
  expect(errors).toEqual([]);
});

test("the default of a lift that was chosen is named for what it is, and not for the choice", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.locator("#lift-title button").click();
  const kind = page.locator("#lift").getByRole("combobox", { name: "Raised by" });
  const first = () => kind.locator("option").first().textContent();
  await kind.selectOption("cord-lock");
  await saved(page);
  await expect.poll(first).toMatch(/\(default\)$/);
  const before = await first();
  await kind.selectOption({ index: 0 });
  await saved(page);
  // What stands there once it is chosen is what it said that it would be; words follow the drawing.
  await expect.poll(first).toBe(before);
  const sentence = page.locator("#lift .chapter-sentence");
  await expect
    .poll(async () => /spring/i.test((await sentence.textContent()) ?? ""))
    .toBe(/spring/i.test(before ?? ""));
  expect(errors).toEqual([]);
});
