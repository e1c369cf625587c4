import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { drawing, firstVisit, openAll, openShade, saved } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("a style is chosen by its drawing: sentence, settings and sheet follow, and undo takes it back", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await openAll(page);
  const before = await drawing(page);
  const styles = page.getByRole("group", { name: "Style" });
  expect(await styles.getByRole("radio").count()).toBe(10);
  expect(await styles.getByRole("radio", { name: "Flat" }).isChecked()).toBe(true);

  await styles.getByRole("radio", { name: "Hobbled" }).check({ force: true });
  await page.getByText(/^Hobbled, with/).waitFor();
  await page.getByRole("textbox", { name: /^Tape from mark to mark/ }).waitFor();
  expect(await drawing(page)).not.toEqual(before);
  await saved(page);

  await page.keyboard.press("ControlOrMeta+z");
  await page.getByText(/^Flat, with/).waitFor();
  expect(await styles.getByRole("radio", { name: "Flat" }).isChecked()).toBe(true);
  expect(await drawing(page)).toEqual(before);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("with the keyboard alone: the arrows go from style to style", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await openAll(page);
  await page.getByRole("radio", { name: "Flat" }).focus();
  await page.keyboard.press("ArrowRight");
  await page.getByText(/^Ribbed, with/).waitFor();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await page.getByText(/^Stitched-tuck, with/).waitFor();
  await page.getByRole("textbox", { name: /^Depth of a tuck/ }).waitFor();
  expect(errors).toEqual([]);
  await page.context().close();
});
