import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isThere, startWebKit, type WebKitPage } from "./webkit.ts";

const sentence = (section: string) => `//*[@id="${section}"]//*[contains(@class, "chapter-sentence")]`;
const button = (name: string) => `//button[normalize-space()="${name}"]`;
const SAVED = '//*[@data-testid="save-state"][@data-state="saved"]';

describe.skipIf(!isThere)("in WebKit", () => {
  let page: WebKitPage;
  beforeAll(async () => {
    page = await startWebKit();
  });
  afterAll(() => page?.close());

  test("a shade is drawn from its measures, kept, changed and undone", async () => {
    await page.goto(page.url);
    await page.see("//a[contains(., 'Number 3, Lantern Row')]");
    await page.click('//label[normalize-space()="millimetres" or normalize-space()="millimeters"]');
    await page.type("(//form//input[not(@type='radio')])[1]", "900");
    await page.type("(//form//input[not(@type='radio')])[2]", "1500");
    await page.click(button("Draw my shade"));
    await page.see("//*[name()='svg'][contains(@class, 'sheet-svg')]");
    await page.see(SAVED);
    // Inside mount, metric: 13 mm off the width (defaults.ts, with its source).
    await page.see(`${sentence("measure")}[contains(., "887")]`);
    const drawn = await page.evaluate("return document.querySelector('.sheet-svg').innerHTML");
    await page.type("//input[@id=//label[normalize-space()='Width at the top']/@for]", "700");
    await page.see(`${sentence("measure")}[contains(., "687")]`);
    expect(await page.evaluate("return document.querySelector('.sheet-svg').innerHTML")).not.toBe(drawn);
    await page.click("//button[starts-with(@aria-label, 'Undo: ')]");
    await page.see(`${sentence("measure")}[contains(., "887")]`);
    await page.see(SAVED);
    expect(await page.errors()).toEqual([]);
  });

  test("it is raised to where its slider is pressed", async () => {
    const track = "//*[contains(@class, 'raise-track')]";
    const raised = "return document.querySelector('.raise-input').valueAsNumber";
    const height = await page.evaluate("return document.querySelector('.raise-track').clientHeight");
    await page.pressBelow(track, Number(height) / 4);
    expect(await page.evaluate(raised)).toBeCloseTo(0.25, 1);
    await page.see("//*[contains(@class, 'caption-words')][not(contains(., 'Lowered.'))]");
    await page.pressBelow(track, Number(height) / 2 - 1);
    expect(await page.evaluate(raised)).toBe(0);
  });

  test("its picture is turned in space, or drawn", async () => {
    await page.click("//button[@role='tab'][normalize-space()='Picture']");
    await page.click(button("turn it"));
    await page.see(
      "//*[contains(@class, 'live-room')] | //*[contains(., 'This browser cannot draw in space')]",
    );
    expect(await page.errors()).toEqual([]);
  });

  test("it works with nothing to serve it, and has what was kept", async () => {
    await page.evaluate("return navigator.serviceWorker.ready.then(() => true)");
    expect(await page.evaluate("return document.body.innerText")).not.toContain("A newer Shadewright");
    await page.reload();
    await page.see(`${sentence("measure")}[contains(., "887")]`);
    await page.stopServing();
    await page.reload();
    await page.see(`${sentence("measure")}[contains(., "887")]`);
    expect(await page.errors()).toEqual([]);
  });
});
