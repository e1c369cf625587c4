import { afterAll, beforeAll, expect, test } from "vitest";
import { type InLine, type Job, jobText, newJob, newWindow } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, PHONE, saved, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** Three windows of one head and three sills. */
function kitchen(inLine?: InLine): Job {
  const job = newJob({ id: "kitchen-job", name: "Kitchen job", system: "metric" });
  const windows = [
    ["Left", 1210, 905],
    ["Sink", 1050, 1065],
    ["Garden door", 2060, 55],
  ].map(([name, heightMm, sillAboveFloorMm], i) => {
    const window = newWindow({
      id: `window-${i}`,
      name: String(name),
      widthMm: 900,
      heightMm: Number(heightMm),
    });
    return { ...window, opening: { ...window.opening, sillAboveFloorMm: Number(sillAboveFloorMm) } };
  });
  return { ...job, rooms: [{ id: "room", name: "Kitchen", windows, ...(inLine ? { inLine } : {}) }] };
}

async function openKitchen(viewport?: { width: number; height: number }) {
  const opened = await firstVisit(harness, viewport === undefined ? {} : { viewport });
  const { page } = opened;
  await page.locator('input[type="file"]').setInputFiles({
    name: "kitchen.shadewright.json",
    mimeType: "application/json",
    buffer: Buffer.from(jobText(kitchen())),
  });
  await sectionTitle(page, "rooms").click();
  return opened;
}

const plain = (text: string | null) => (text ?? "").replaceAll("\u00a0", " ").replaceAll(/\s+/g, " ").trim();

test("the folds of a room are aligned, said in words and drawn; undo lets them be", async () => {
  const { page, errors } = await openKitchen();
  const alignment = plan(kitchen({})).rooms[0]?.alignment;
  const elevation = page.locator(".elevation").first();
  expect(await elevation.locator("svg text").count()).toBe(0);
  const box = page.getByRole("checkbox", { name: "Line up the folds of Kitchen" });
  await box.check();
  await page.locator(".room-line-words").waitFor();
  expect(plain(await page.locator(".room-line-words").textContent())).toBe(plain(alignment?.words ?? ""));
  const told = await page.locator(".room-line-windows li > span").allTextContents();
  expect(told.map(plain)).toEqual(
    alignment?.windows.map(({ windowName, words }) => plain(`${windowName} ${words}`)),
  );
  const heights = await elevation.locator("svg text").allTextContents();
  expect(heights.map(plain)).toContain(`${alignment?.levelsMm.at(-1)} mm`);
  await saved(page);
  await page.keyboard.press("ControlOrMeta+z");
  await page.locator(".room-line-words").waitFor({ state: "detached" });
  expect(await box.isChecked()).toBe(false);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a window is left out of the line and taken in again", async () => {
  const { page } = await openKitchen();
  await page.getByRole("checkbox", { name: "Line up the folds of Kitchen" }).check();
  await page.getByRole("button", { name: /^Leave out.*Sink/ }).click();
  const sink = page.locator(".room-line-windows li", { hasText: "Sink" });
  await sink.filter({ hasText: "it was left out of the line" }).waitFor();
  await page.getByRole("button", { name: /^Take in.*Sink/ }).click();
  await sink.filter({ hasText: "on the shared levels" }).waitFor();
  await page.context().close();
});

test("what they share can be changed; the shade's own page has the rows of its room", async () => {
  const { page } = await openKitchen();
  await page.getByRole("checkbox", { name: "Line up the folds of Kitchen" }).check();
  await page.getByText("What they share").click();
  await page.getByRole("textbox", { name: "Spacing for the whole room" }).fill("150");
  const words = page.locator(".room-line-words");
  await words.filter({ hasText: /150.mm apart/ }).waitFor();
  await page.getByRole("combobox", { name: "Folds share" }).selectOption("spacing");
  await words.filter({ hasNotText: "above the floor" }).waitFor();
  const rows = plan(kitchen({ spacingMm: 150, folds: "spacing" })).shades[0]?.grid.rows.length;
  await page.locator(".window-row a", { hasText: "Left" }).click();
  await page.locator(".sheet-svg").waitFor();
  await page.locator(".facts > summary").first().click();
  const facts = await page.getByRole("row", { name: /Rows of rings/ }).textContent();
  expect(plain(facts)).toBe(`Rows of rings${rows}`);
  await page.context().close();
});

test("on a phone nothing runs off the page", async () => {
  const { page } = await openKitchen(PHONE);
  await page.getByRole("checkbox", { name: "Line up the folds of Kitchen" }).check();
  await page.locator(".room-line-words").waitFor();
  const wide = await page.evaluate(() => document.documentElement.scrollWidth > window.innerWidth);
  expect(wide).toBe(false);
  await page.context().close();
});
