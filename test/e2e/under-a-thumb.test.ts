import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, openShade, PHONE } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const FINGER = { viewport: PHONE, hasTouch: true, isMobile: true };

/** Controls that are smaller than a fingertip; those within a sentence are excepted (WCAG 2.2, 2.5.5). */
function small(page: Page, leastPx: number): Promise<string[]> {
  return page.evaluate((least) => {
    const all = document.querySelectorAll<HTMLElement>(
      "main button, main a, main select, main input:not([type=radio], [type=checkbox]), header button, main summary",
    );
    return [...all]
      .filter((one) => one.checkVisibility() && !one.closest("p, .chapter-sentence, .hidden-words, .raise"))
      .filter((one) => one.getBoundingClientRect().height < least - 0.5)
      .map(
        (one) => `${one.className} ${one.textContent?.slice(0, 30)} ${one.getBoundingClientRect().height}`,
      );
  }, leastPx);
}

test("the shade is raised by dragging its hem, and has the whole width of a phone", async () => {
  const { page, errors } = await firstVisit(harness, FINGER);
  await openShade(page, harness.url);
  const hem = await page.getByTestId("hem").boundingBox();
  if (!hem) throw new Error("no hem to take hold of");
  expect(hem.height).toBeGreaterThanOrEqual(43.5);
  const [x, y] = [hem.x + hem.width / 2, hem.y + hem.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y - 20, { steps: 4 });
  await page.mouse.up();
  const raised = async () => Number(await page.getByRole("slider", { name: "Raise" }).inputValue());
  await expect.poll(raised).toBeGreaterThan(0.1);
  // The hem is where the finger left it.
  const offPx = async () => Math.abs(((await page.getByTestId("hem").boundingBox())?.y ?? 0) - (hem.y - 20));
  await expect.poll(offPx).toBeLessThan(3);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("under a finger nothing to press is lower than 44 px, and no letter smaller than 12 px", async () => {
  const { page } = await firstVisit(harness, FINGER);
  await openShade(page, harness.url);
  expect(await small(page, 44)).toEqual([]);
  const letters = await page.locator(".sheet-svg text").evaluateAll((all) =>
    all.map((one) => {
      const { a = 1, b = 0 } = (one as SVGGraphicsElement).getScreenCTM() ?? {};
      return Number.parseFloat(getComputedStyle(one).fontSize) * Math.hypot(a, b);
    }),
  );
  expect(letters.length).toBeGreaterThan(3);
  expect(Math.min(...letters)).toBeGreaterThanOrEqual(11.9);
  await page.context().close();
});

test("the focus is never under the drawing or the bar of sections, and the strip gives way while one types", async () => {
  const { page } = await firstVisit(harness, FINGER);
  await openShade(page, harness.url);
  const stage = page.locator(".shade-stage > .stage");
  const atRest = (await stage.boundingBox())?.height ?? 0;
  const fields = await page.locator(".shade-walk .chapter[data-open] input.field-input:visible").all();
  expect(fields.length).toBeGreaterThan(6);
  for (const field of fields) {
    await field.focus();
    const own = await field.boundingBox();
    const strip = await stage.boundingBox();
    const foot = await page.locator(".rail-next").boundingBox();
    if (!own || !strip || !foot) throw new Error("nothing to measure");
    expect(own.y).toBeGreaterThanOrEqual(strip.y + strip.height - 1);
    expect(own.y + own.height).toBeLessThanOrEqual(foot.y + 1);
    expect(strip.height).toBeLessThan(atRest);
    // The shade is too small then for what is drawn to be pulled.
    expect(await page.locator(".motif-handle").isVisible()).toBe(false);
  }
  await page.context().close();
});

test("sections come up from below, say what waits, and lead there", async () => {
  const { page } = await firstVisit(harness, FINGER);
  await openShade(page, harness.url, "kitchen-sink");
  const opener = page.getByRole("button", { name: "Sections" });
  await opener.click();
  const rail = page.getByRole("navigation", { name: "Sections" });
  await rail.getByRole("button", { name: /^Measure.*to fix/ }).waitFor();
  await page.keyboard.press("Escape");
  expect(await opener.evaluate((one) => one === document.activeElement)).toBe(true);
  await opener.click();
  await rail.getByRole("button", { name: /^Board/ }).click();
  expect(await opener.getAttribute("aria-expanded")).toBe("false");
  await page.locator("#board[data-open]").waitFor();
  // Found again as it was left.
  await page.reload();
  await page.locator("#board[data-open]").waitFor();
  await page.getByRole("button", { name: /^Next:? What a child can stand on/ }).click();
  // The section is drawn open before its field has the focus.
  await page.locator('[data-pointer="/rooms/1/windows/0/opening/footholds"] :focus').waitFor();
  await page.context().close();
});

test("made smaller, a drawing that the strip of a phone is too low for gives way to the front", async () => {
  const { page } = await firstVisit(harness, FINGER);
  await openShade(page, harness.url);
  const back = page.getByRole("tab", { name: "Back" });
  await back.click();
  expect(await back.getAttribute("aria-selected")).toBe("true");
  await page.getByRole("button", { name: "smaller" }).click();
  await page.locator("#tab-front[aria-selected=true]").waitFor();
  expect(await page.getByRole("button", { name: "larger" }).isVisible()).toBe(true);
  await page.context().close();
});
