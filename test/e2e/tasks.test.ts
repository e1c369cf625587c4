import { readFile } from "node:fs/promises";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { newJob, newWindow } from "../../src/job/index.ts";
import { type Harness, startBrowser } from "./browser.ts";
import {
  demo,
  drawing,
  field,
  firstVisit,
  openShade,
  PHONE,
  pdfText,
  saved,
  sectionTitle,
  WIDTH,
} from "./planner.ts";

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
    async drag(page: Page, what: Locator, byPx: number) {
      done++;
      const box = await what.boundingBox();
      if (box === null) throw new Error("there is nothing to drag");
      const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
      await page.mouse.move(x, y);
      await page.mouse.down();
      await page.mouse.move(x + byPx, y, { steps: 4 });
      await page.mouse.up();
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

/** Three windows in two cloths; cut around the pieces, they take less lining than cut from edge to edge. */
const THREE_WINDOWS = {
  format: "shadewright-job",
  version: 1,
  id: "three",
  name: "Three windows (demo)",
  demo: true,
  units: { system: "metric", ruler: "1 mm" },
  cloths: [
    { id: "face", name: "Face", usableWidthMm: 1400, massGsm: 200, pricePerM: 20 },
    { id: "back", name: "Back", usableWidthMm: 1370, massGsm: 150, pricePerM: 8 },
  ],
  rooms: [
    {
      id: "r",
      name: "Room",
      // Narrower side hems save a width of lining, however well all of it is laid.
      windows: (
        [
          [600, 2090],
          [860, 1170],
          [1250, 1590],
        ] as const
      ).map(([widthMm, heightMm], n) => ({
        id: `w${n}`,
        name: `Window ${n + 1}`,
        opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
        shade: { face: "face", lining: "back", mount: "to-size" },
      })),
    },
  ],
};

async function download(page: Page, press: () => Promise<void>) {
  const downloading = page.waitForEvent("download");
  await press();
  return pdfText(await downloading);
}

test("a lined flat shade with a cord lock, from nothing to its workbook, in 6 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  const maker = hands();
  await maker.type(page.getByRole("textbox", { name: "Width", exact: true }), "36");
  await maker.type(page.getByRole("textbox", { name: "Length", exact: true }), "60");
  await maker.press(page.getByRole("button", { name: "Draw my shade" }));
  await page.locator(".sheet-svg").waitFor();
  await maker.press(sectionTitle(page, "lift"));
  await maker.choose(page.getByRole("combobox", { name: "Raised by", exact: true }), "cord-lock");
  const book = await download(page, () => maker.press(page.getByRole("button", { name: "Workbook (PDF)" })));
  expect(book.text).toMatch(/lock/i);
  expect(maker.actions).toBeLessThanOrEqual(6);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("the same window Austrian and relaxed, in a print of one's own with its motif in the middle, in 10 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  await field(page, "Width").fill("36");
  await field(page, "Length").fill("60");
  await page.getByRole("button", { name: "Draw my shade" }).click();
  await page.locator(".sheet-svg").waitFor();
  const maker = hands();
  await maker.press(sectionTitle(page, "shape"));
  await maker.press(page.locator("#shape").getByRole("radio", { name: /^Austrian/ }));
  await maker.press(sectionTitle(page, "cloth"));
  const cloth = page.locator("#cloth");
  await maker.press(cloth.getByRole("button", { name: /^Add a (?:cloth|fabric) of your own$/ }));
  // Until its width and weight are known nothing is made of it.
  await page.locator('[data-finding="cloth.unknown-part"]').first().waitFor();
  await maker.type(cloth.getByRole("textbox", { name: /^Usable width/ }), "54");
  await maker.type(cloth.getByRole("textbox", { name: /^Weight/ }), "7");
  await maker.press(cloth.getByRole("button", { name: "It has a pattern that repeats" }));
  await maker.type(cloth.getByRole("textbox", { name: /^Repeat along/ }), "12 5/8");
  await maker.type(cloth.getByRole("textbox", { name: /^Repeat across/ }), "11");
  const sentence = cloth.locator(".chapter-sentence");
  await expect.poll(() => sentence.textContent()).toMatch(/^My (?:cloth|fabric), \d+ widths?/);
  const austrian = await drawing(page);
  await maker.press(page.locator("#shape").getByRole("radio", { name: /^Relaxed/ }));
  await expect.poll(() => drawing(page)).not.toEqual(austrian);
  expect(await page.locator('[data-finding="cloth.unknown-part"]').count()).toBe(0);
  expect(maker.actions).toBeLessThanOrEqual(10);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("three locks of one's own compared, in 12 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  const maker = hands();
  await maker.press(page.getByRole("link", { name: "Parts bench" }));
  await maker.press(page.locator("#bench-locks > summary"));
  for (const [at, slots, most] of [
    [0, "4", "8"],
    [1, "3", "4"],
    [2, "5", "12"],
  ] as const) {
    await maker.press(page.getByRole("button", { name: "Lay out a lock" }));
    const lock = page.locator("#bench-locks .part-card").nth(at);
    await maker.type(lock.getByRole("textbox", { name: /^Slots/ }), slots);
    await maker.type(lock.getByRole("textbox", { name: /^Cords at most/ }), most);
  }
  // For the five cords that the table begins with: own locks first, each with a name to tell it by.
  const locks = page.locator(".fit-table tbody");
  await expect.poll(() => locks.count()).toBeGreaterThanOrEqual(3);
  const names = await locks.locator("th[scope=rowgroup]").allTextContents();
  expect(names.slice(0, 3)).toEqual(["My lock", "My lock 2", "My lock 3"]);
  expect(await locks.nth(1).textContent()).toContain("It takes at most 4 cords; you have 5");
  expect(await locks.nth(2).textContent()).not.toContain("at most");
  expect(maker.actions).toBeLessThanOrEqual(12);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("two remnants, a piece dragged, a saving taken and the cutter's sheets, in 20 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.locator('input[type="file"]').setInputFiles({
    name: "three.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(THREE_WINDOWS)),
  });
  const maker = hands();
  await maker.press(sectionTitle(page, "stock"));
  const add = page.locator("#stock").getByRole("button", { name: "Add a piece of cloth" });
  const lengths = page.locator("#stock").getByRole("textbox", { name: "Length" });
  await maker.press(add);
  await maker.type(lengths.nth(0), "1,9 m");
  await maker.press(add);
  await maker.type(lengths.nth(1), "2,4 m");
  await maker.press(sectionTitle(page, "cutting"));
  const end = page.locator('[data-testid="cutting-state"][data-state="ended"]');
  const stop = page.getByRole("button", { name: "Stop here" });
  await stop.or(end).first().waitFor();
  // It may come to its end by itself before the press does.
  await Promise.race([end.waitFor(), maker.press(stop).catch(() => undefined)]);
  await end.waitFor();
  // The remnants are cut into before a bolt is bought.
  expect(await page.locator("#cutting .bolt").count()).toBeGreaterThan(2);
  const piece = page.getByRole("button", { name: /Face.*: move it$/ }).last();
  await piece.scrollIntoViewIfNeeded();
  await maker.drag(page, piece, 40);
  const hand = page.locator(".cutting-hand").first();
  await expect.poll(() => hand.textContent()).toMatch(/By hand: it (fits|does not fit)/);
  await maker.press(hand.getByRole("button", { name: "Put everything back" }));
  await maker.press(page.getByRole("button", { name: "Try the usual ways" }));
  const saving = page.locator(".savings button").first();
  await saving.waitFor();
  const label = (await saving.textContent())?.replace("Do it: ", "") ?? "";
  await maker.press(saving);
  await page.getByRole("button", { name: `Undo: ${label}` }).waitFor();
  await maker.press(sectionTitle(page, "print"));
  await maker.choose(page.locator("#print").getByRole("combobox", { name: "For", exact: true }), "cutter");
  const sheets = await download(page, () =>
    maker.press(page.locator("#print").getByRole("button", { name: /^Download the workbook/ })),
  );
  expect(sheets.text).toMatch(/Window 1/);
  expect(maker.actions).toBeLessThanOrEqual(20);
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
  await maker.choose(page.locator("#print").getByRole("combobox", { name: "For", exact: true }), "client");
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

test("only strips and steps for a helper, in 3 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  await demo(page).click();
  const maker = hands();
  await maker.press(sectionTitle(page, "print"));
  await maker.choose(page.locator("#print").getByRole("combobox", { name: "For", exact: true }), "helper");
  const sheets = await download(page, () =>
    maker.press(page.locator("#print").getByRole("button", { name: /^Download the workbook/ })),
  );
  expect(sheets.text).not.toMatch(/for the client|USD/);
  expect(maker.actions).toBeLessThanOrEqual(3);
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
  await taken.press(page.getByRole("button", { name: /^Delete/ }));
  await taken.press(page.getByRole("button", { name: "Delete it", exact: true }));
  await demo(page).waitFor({ state: "detached" });
  expect(await page.getByRole("link", { name: /^Back to the bench/ }).count()).toBe(0);
  await taken.press(page.getByRole("button", { name: /^Put it back/ }));
  await demo(page).waitFor();
  expect(taken.actions).toBe(3);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("saved as a file and opened again, undone far, open in two tabs, taken off and had back: nothing is lost, in 12 actions", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  const width = field(page, WIDTH);
  const maker = hands();
  await maker.type(width, "34");
  await maker.type(field(page, "Width at the top"), "35");
  await saved(page);
  await page.reload();
  // Undone far: over what was typed before the page was left.
  await maker.press(page.getByRole("button", { name: /^Undo/ }));
  await maker.press(page.getByRole("button", { name: /^Undo/ }));
  expect(await width.inputValue()).toBe("35 3/4");
  await maker.press(page.getByRole("button", { name: /^Redo/ }));
  expect(await width.inputValue()).toBe("34");
  await saved(page);
  const second = await page.context().newPage();
  await openShade(second, harness.url);
  await maker.press(second.getByRole("button", { name: "Work here instead" }));
  await expect.poll(() => field(second, WIDTH).isEditable()).toBe(true);
  expect(await field(second, WIDTH).inputValue()).toBe("34");
  await page.close();
  await second.goto(`${harness.url}#/job/lantern-row`);
  await maker.press(sectionTitle(second, "print"));
  await second.evaluate(() => Reflect.deleteProperty(window, "showSaveFilePicker"));
  const downloading = second.waitForEvent("download");
  await maker.press(second.getByRole("button", { name: "Save the job as a file" }));
  const file = await (await downloading).path();
  await second.goto(`${harness.url}#/`);
  await maker.press(second.getByRole("button", { name: /^Delete/ }));
  await maker.press(second.getByRole("button", { name: "Delete it", exact: true }));
  await demo(second).waitFor({ state: "detached" });
  await maker.press(second.getByRole("button", { name: /^Put it back/ }));
  await demo(second).waitFor();
  await second.locator('input[type="file"]').setInputFiles({
    name: "row.shadewright.json",
    mimeType: "application/json",
    buffer: await readFile(file),
  });
  // It stands there as it was saved: the file is opened, and nothing is there twice or in the place of another.
  await second.locator("#rooms").waitFor();
  await openShade(second, harness.url);
  expect(await field(second, WIDTH).inputValue()).toBe("34");
  expect(maker.actions).toBeLessThanOrEqual(12);
  expect(errors).toEqual([]);
  await second.context().close();
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

test("sections have the same numbers on the page of a job and of its window, and next leads to the next question", async () => {
  const { page, errors } = await firstVisit(harness);
  const numbers = () =>
    page
      .getByRole("navigation", { name: "Sections" })
      .locator(".rail-entry:has(.rail-number:not(:empty))")
      .evaluateAll((all) =>
        all.map((one) =>
          [".rail-number", ".rail-title"].map((part) => one.querySelector(part)?.textContent).join(" "),
        ),
      );
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator(".elevation-window").first().waitFor();
  const ofJob = await numbers();
  await openShade(page, harness.url, "kitchen-sink");
  const ofWindow = await numbers();
  expect(ofWindow.length).toBeGreaterThan(ofJob.length);
  expect(ofWindow.filter((one) => ofJob.includes(one))).toEqual(ofJob);
  expect(ofWindow.map((one) => Number.parseInt(one, 10))).toEqual(ofWindow.map((_, at) => at + 1));
  // What the index says stands over the section.
  const titles = (await page.locator(".chapter-title").allTextContents()).join();
  expect(ofWindow.filter((one) => titles.includes(one.replace(" ", "")))).toHaveLength(8);

  // Answered, the next one is asked.
  const next = page.locator(".rail-next-go");
  const asked = (await next.textContent()) ?? "";
  expect(asked).toMatch(/child can stand on/);
  await next.click();
  await page.locator('[data-pointer$="/opening/footholds"] :focus').waitFor();
  await page.keyboard.press("Enter");
  await expect.poll(() => next.textContent()).not.toBe(asked);
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
