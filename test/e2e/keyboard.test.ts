import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, drawing, firstVisit, openShade, pdfText, saved } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** Name of what has the focus, as a screen reader would say it. */
function focused(page: Page): Promise<string> {
  return page.evaluate(() => {
    const element = document.activeElement;
    if (!(element instanceof Element)) return "";
    const label = element.getAttribute("aria-label") ?? element.closest("label")?.textContent;
    const labelled = element.id === "" ? null : document.querySelector(`label[for="${element.id}"]`);
    return (label ?? labelled?.textContent ?? element.textContent ?? "").trim();
  });
}

/** Presses Tab until the focus is on what is wanted. */
async function tabTo(page: Page, wanted: RegExp, most = 80): Promise<void> {
  const passed: string[] = [];
  for (let n = 0; n < most; n++) {
    await page.keyboard.press("Tab");
    const name = await focused(page);
    if (wanted.test(name)) return;
    passed.push(name.slice(0, 40));
  }
  throw new Error(`no stop called ${wanted}; passed ${passed.join(" | ")}`);
}

test("from the shelf to a changed figure and the workbook, by keyboard alone", async () => {
  const { page, errors } = await firstVisit(harness);
  await demo(page).waitFor();
  await tabTo(page, /^Number 3, Lantern Row/);
  await page.keyboard.press("Enter");
  await page.locator(".elevation-window").first().waitFor();
  await tabTo(page, /^Street window, left, 35/);
  await page.keyboard.press("Enter");
  await page.locator(".sheet-svg").waitFor();

  await tabTo(page, /Finished width.*show the working/);
  await page.keyboard.press("Enter");
  await page.getByRole("complementary", { name: /Working: Finished width/ }).waitFor();
  await tabTo(page, /Taken off the width/);
  await page.keyboard.type("3/4");
  await page.keyboard.press("Escape");
  await page.locator(".fig", { hasText: /35.in/ }).first().waitFor();
  await saved(page);

  await tabTo(page, /^9?\s*Make, string, hang/);
  await page.keyboard.press("Enter");
  await tabTo(page, /Download this shade’s workbook/);
  const downloading = page.waitForEvent("download");
  await page.keyboard.press("Enter");
  expect((await pdfText(await downloading)).text).toContain("Street window, left");
  expect(errors).toEqual([]);
  await page.context().close();
});

test("arrows go from figure to figure on the drawing, and from sheet to sheet", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.getByRole("tab", { name: "Front" }).focus();
  await page.keyboard.press("ArrowRight");
  expect(await page.getByRole("tab", { name: "Back" }).getAttribute("aria-selected")).toBe("true");
  expect(await focused(page)).toBe("Back");
  await page.keyboard.press("Tab");
  const first = await focused(page);
  expect(first).toMatch(/show the working/);
  await page.keyboard.press("ArrowRight");
  expect(await focused(page)).not.toBe(first);
  await page.keyboard.press("Enter");
  await page.getByRole("complementary", { name: /Working/ }).waitFor();
  await page.keyboard.press("Escape");
  expect(await focused(page)).toMatch(/show the working/);
  await page.context().close();
});

function caption(page: Page, words: string) {
  return page.locator(".caption-words", { hasText: words });
}

test("the raise slider pulls the shade up and lets it down", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  const lowered = await drawing(page);
  await page.getByRole("slider", { name: "Raise" }).focus();
  await page.keyboard.press("End");
  await caption(page, "Raised.").waitFor();
  const raised = await drawing(page);
  expect(raised).not.toEqual(lowered);
  await page.getByRole("tab", { name: "Back" }).click();
  await caption(page, "Raised.").waitFor();
  await page.getByRole("tab", { name: "Front" }).click();
  const slider = page.getByRole("slider", { name: "Raise" });
  await slider.focus();
  await page.keyboard.press("Home");
  for (const key of ["ArrowUp", "ArrowRight", "ArrowRight", "ArrowDown", "ArrowLeft", "PageUp"])
    await page.keyboard.press(key);
  expect(await slider.inputValue()).toBe("0.11");
  expect(await slider.getAttribute("aria-valuetext")).toBe("11%");
  await page.keyboard.press("Home");
  await caption(page, "Lowered.").waitFor();
  expect(await drawing(page)).toEqual(lowered);
  await page.context().close();
});
