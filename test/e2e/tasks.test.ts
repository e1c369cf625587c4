import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { newJob, newWindow } from "../../src/job/index.ts";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, field, firstVisit, openShade, PHONE, pdfText, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** What a maker does, one by one: a press, a text typed or pasted, an entry chosen. */
function hands() {
  let done = 0;
  return {
    get actions() {
      return done;
    },
    async press(what: Locator) {
      done++;
      await what.click();
    },
    async type(into: Locator, text: string) {
      done++;
      await into.fill(text);
    },
    async choose(from: Locator, entry: string) {
      done++;
      await from.selectOption(entry);
    },
    async paste(into: Locator, text: string) {
      done++;
      await into.evaluate((input, pasted) => {
        const clipboardData = new DataTransfer();
        clipboardData.setData("text/plain", pasted);
        input.dispatchEvent(new ClipboardEvent("paste", { clipboardData, bubbles: true, cancelable: true }));
      }, text);
    },
  };
}

async function download(page: Page, press: () => Promise<void>) {
  const downloading = page.waitForEvent("download");
  await press();
  return pdfText(await downloading);
}

test("a lined flat shade with a cord lock, from nothing to its workbook, in 7 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  const maker = hands();
  await maker.type(page.getByRole("textbox", { name: "Width", exact: true }), "36");
  await maker.type(page.getByRole("textbox", { name: "Length", exact: true }), "60");
  await maker.press(page.getByRole("button", { name: "Draw my shade" }));
  await page.locator(".sheet-svg").waitFor();
  await maker.press(sectionTitle(page, "lift"));
  await maker.choose(page.getByRole("combobox", { name: "Raised by", exact: true }), "cord-lock");
  await maker.press(sectionTitle(page, "make"));
  const book = await download(page, () =>
    maker.press(page.getByRole("button", { name: "Download this shade’s workbook" })),
  );
  expect(book.text).toMatch(/lock/i);
  expect(maker.actions).toBeLessThanOrEqual(7);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a bay of three and a kitchen, to the list of what to buy and the quote, in 20 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  const maker = hands();
  await maker.type(page.getByRole("textbox", { name: "Width", exact: true }), "24");
  await maker.type(page.getByRole("textbox", { name: "Length", exact: true }), "48");
  await maker.press(page.getByRole("button", { name: "Draw my shade" }));
  await page.locator(".sheet-svg").waitFor();
  await maker.press(page.getByRole("link", { name: "My windows" }).first());
  await maker.press(sectionTitle(page, "rooms"));
  const room = page.locator(".room-block").first();
  await maker.press(room.locator("summary", { hasText: "Several windows at once" }));
  await maker.paste(
    room.getByRole("textbox", { name: "Name, row 1" }),
    "Bay left\t22 1/2\t60\nBay middle\t48\t60\nBay right\t22 1/2\t60",
  );
  await maker.press(room.getByRole("button", { name: "Add 3 windows" }));
  await maker.press(sectionTitle(page, "cost"));
  await expect.poll(() => page.locator("#cost tbody tr").count(), { timeout: 180_000 }).toBeGreaterThan(5);
  await maker.press(sectionTitle(page, "print"));
  await maker.press(page.locator("#print").getByText("What to print", { exact: true }));
  await maker.press(page.locator("#print").getByRole("button", { name: "The client", exact: true }));
  const quote = await download(page, () =>
    maker.press(page.locator("#print").getByRole("button", { name: /^Download the workbook/ })),
  );
  for (const name of ["First window", "Bay left", "Bay middle", "Bay right"])
    expect(quote.text).toContain(name);
  expect(maker.actions).toBeLessThanOrEqual(20);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("for sale in Canada with cords: what must change, on one card, in 4 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  await demo(page).click();
  const maker = hands();
  await maker.press(sectionTitle(page, "place"));
  await maker.choose(page.locator("#place").getByRole("combobox", { name: "Where it will hang" }), "ca");
  await maker.choose(page.locator("#place").getByRole("combobox", { name: "Use", exact: true }), "for-sale");
  await maker.press(sectionTitle(page, "findings"));
  const card = page.locator('#findings [data-card="safety.cords-front"]');
  await card.waitFor();
  expect(await card.count()).toBe(1);
  expect(await card.getAttribute("data-severity")).toBe("stop");
  await card
    .getByRole("button", { name: /^Do it for all \d+/ })
    .first()
    .waitFor();
  expect(maker.actions).toBeLessThanOrEqual(4);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("only strips and steps for a helper, in 4 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  await demo(page).click();
  const maker = hands();
  await maker.press(sectionTitle(page, "print"));
  await maker.press(page.locator("#print").getByText("What to print", { exact: true }));
  await maker.press(page.locator("#print").getByRole("button", { name: "A helper", exact: true }));
  const sheets = await download(page, () =>
    maker.press(page.locator("#print").getByRole("button", { name: /^Download the workbook/ })),
  );
  expect(sheets.text).not.toMatch(/for the client|USD/);
  expect(maker.actions).toBeLessThanOrEqual(4);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("“my cord slips”: from the shelf to its answer in 2 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  const maker = hands();
  await maker.press(page.getByRole("link", { name: "Ask a question" }));
  await maker.type(page.getByRole("textbox", { name: "Your question, in your own words" }), "my cord slips");
  const answer = page.locator('.ask-answer[data-question="lock-slips"]');
  await answer.waitFor();
  expect(await answer.textContent()).toMatch(/lock/);
  expect(maker.actions).toBeLessThanOrEqual(3);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("two steps at the bench, away, and back to the third in 1 action; the job is taken off and had back in 3", async () => {
  const { page, errors } = await firstVisit(harness, { viewport: PHONE, hasTouch: true, isMobile: true });
  await page.goto(`${harness.url}#/job/lantern-row/bedroom-bed/bench`);
  const done = page.getByRole("button", { name: "Done", exact: true });
  for (const step of [1, 2]) {
    await page.getByText(`step ${step} of`).waitFor();
    await done.click();
  }
  await page.getByText("step 3 of").waitFor();
  await page.goto(harness.url);
  const back = hands();
  await back.press(page.getByRole("link", { name: "Back to the bench: Above the bed" }));
  await page.getByText("step 3 of").waitFor();
  expect(back.actions).toBe(1);
  await page.goto(harness.url);
  const taken = hands();
  await taken.press(page.getByRole("button", { name: /^Take off the shelf/ }));
  await taken.press(page.getByRole("button", { name: "Take it off", exact: true }));
  await demo(page).waitFor({ state: "detached" });
  expect(await page.getByRole("link", { name: /^Back to the bench/ }).count()).toBe(0);
  await taken.press(page.getByRole("button", { name: /^Put it back/ }));
  await demo(page).waitFor();
  expect(taken.actions).toBe(3);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("where a number comes from, as a card to hand on, in 2 actions", async () => {
  const { page, errors } = await firstVisit(harness, { permissions: ["clipboard-read", "clipboard-write"] });
  await openShade(page, harness.url);
  const maker = hands();
  await maker.press(page.locator(".shade-walk .fig").first());
  const slip = page.locator(".slip");
  await maker.press(slip.getByRole("button", { name: "Copy the working" }));
  await slip.getByText("Copied.").waitFor();
  const card = await page.evaluate(() => navigator.clipboard.readText());
  const title = (await slip.locator(".slip-title").textContent()) ?? "";
  expect(title.length).toBeGreaterThan(3);
  expect(card.startsWith(title)).toBe(true);
  expect(card).toMatch(/ = .* = /);
  expect(card).toContain("Source: ");
  expect(maker.actions).toBe(2);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("sixty windows take less than three screens of a phone until they are unfolded", async () => {
  const { page, errors } = await firstVisit(harness, { viewport: PHONE, hasTouch: true, isMobile: true });
  const rooms = Array.from({ length: 20 }, (_, r) => ({
    id: `room-${r}`,
    name: `Room ${r + 1}`,
    windows: [0, 1, 2].map((w) =>
      newWindow({
        id: `w-${r}-${w}`,
        name: `Window ${3 * r + w + 1}`,
        widthMm: 600 + 90 * w,
        heightMm: 1200,
      }),
    ),
  }));
  const job = { ...newJob({ id: "sixty", name: "Sixty windows, demo", system: "imperial" }), rooms };
  await page.locator('input[type="file"]').setInputFiles({
    name: "sixty.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(job)),
  });
  await page.locator(".elevation-window").first().waitFor({ timeout: 180_000 });
  await page
    .locator("#findings .chapter-sentence", { hasText: /check|note|fix/ })
    .waitFor({ timeout: 180_000 });
  const screens = await page.evaluate(() => {
    const foot = document.querySelector("#rates")?.getBoundingClientRect().bottom ?? 0;
    return (foot + scrollY) / innerHeight;
  });
  expect(screens).toBeGreaterThan(1);
  expect(screens).toBeLessThan(3);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  expect(await field(page, "Job").inputValue()).toBe("Sixty windows, demo");
  expect(errors).toEqual([]);
  await page.context().close();
});
