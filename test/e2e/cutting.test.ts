import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { demo, dragByFinger, firstVisit, saved } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** The demonstration with its Cutting chapter open and the search at its end. */
async function openCutting(page: Page): Promise<void> {
  await demo(page).click();
  await page.locator("#cutting-title button").click();
  await page.locator(".bolt-svg").first().waitFor();
}

/** Better plans may be on their way for a while: what is there will do. */
async function ended(page: Page): Promise<void> {
  const stop = page.getByRole("button", { name: "Stop here" });
  const end = page.locator('[data-testid="cutting-state"][data-state="ended"]');
  await stop.or(end).first().waitFor({ timeout: 180_000 });
  if (await stop.isVisible()) await stop.click({ timeout: 5000 }).catch(() => {});
  await page.locator('[data-testid="cutting-state"][data-state="ended"]').waitFor({ timeout: 180_000 });
}

function threeWindows() {
  const sizes = [
    [900, 1500],
    [1100, 1250],
    [760, 2000],
  ];
  const windows = sizes.map(([widthMm, heightMm], n) => ({
    id: `w${n}`,
    name: `Window ${n + 1}`,
    opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
    shade: { face: "face", lining: "back", mount: "to-size" },
  }));
  return {
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
    rooms: [{ id: "r", name: "Room", windows }],
  };
}

test("all pieces lie on the cloths, how near that is to the least is told, and the shopping follows", async () => {
  const { page, errors } = await firstVisit(harness);
  await openCutting(page);
  await ended(page);
  const chapter = page.locator("#cutting");
  expect(await chapter.locator(".chapter-sentence").textContent()).toMatch(/\d+ pieces on \d+ fabrics/);
  const words = (await chapter.textContent()) ?? "";
  expect(words).toMatch(/No plan takes less fabric: that is proved\./);
  expect(words).not.toMatch(/optimal/i);
  // What the drawings use of one cloth is what is to be bought of it.
  await page.locator("#cost-title button").click();
  const bought = await page.locator("#cost tr", { hasText: "Ticking stripe" }).textContent();
  expect(bought).toMatch(/1.1⁄4.yd/);
  expect(errors).toEqual([]);
});

test("the search is stopped by its button and keeps what it has", async () => {
  const { page } = await firstVisit(harness);
  await openCutting(page);
  const stop = page.getByRole("button", { name: "Stop here" });
  await stop.click();
  await ended(page);
  expect(await page.locator('[data-testid="cutting-state"]').textContent()).toMatch(
    /Stopped after [\d,]+ plans/,
  );
  expect(await page.locator(".bolt-svg").count()).toBeGreaterThan(3);
  await page.getByRole("button", { name: "Look again" }).click();
  await ended(page);
  // Before a left-handed cutter the bolt lies turned half round: to the right is off its end.
  await page.locator("summary", { hasText: "How it is cut, and what is kept" }).click();
  await page.getByLabel("The cutter is").selectOption("left");
  await saved(page);
  await expect
    .poll(() => page.locator(".bolt .caption-words").first().textContent())
    .toMatch(/cut from the right, the right selv[a-z]+ below/);
  await ended(page);
  const ticket = page.locator("details", {
    has: page.locator("summary", { hasText: "Cuts in their order" }),
  });
  await ticket.first().locator("summary").click();
  expect(await ticket.first().locator("thead").textContent()).toContain("Within");
  await page.getByRole("button", { name: "Over the sink: Face: move it" }).focus();
  await page.keyboard.press("Shift+ArrowRight");
  await expect.poll(() => page.locator(".cutting-hand").textContent()).toMatch(/does not fit.*outside/);
});

test("a piece moved by key or by mouse is checked at once, and put back", async () => {
  const { page, errors } = await firstVisit(harness);
  await openCutting(page);
  await ended(page);
  const piece = page.getByRole("button", { name: "Over the sink: Face: move it" });
  await piece.focus();
  await page.keyboard.press("ArrowDown");
  const hand = page.locator(".cutting-hand");
  await expect.poll(() => hand.textContent()).toMatch(/does not fit.*outside/);
  await hand.getByRole("button", { name: "Put everything back" }).click();
  expect(await hand.count()).toBe(0);

  await piece.scrollIntoViewIfNeeded();
  const box = await piece.boundingBox();
  if (box === null) throw new Error("the piece is not there");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  // Further along an endless bolt it still fits, and takes more cloth.
  await expect.poll(() => hand.textContent()).toMatch(/By hand: it fits\..* more than the plan/);
  expect(errors).toEqual([]);
});

test("a piece laid by hand is kept with the job, undone, and let go", async () => {
  const { page, errors } = await firstVisit(harness);
  await openCutting(page);
  await ended(page);
  const piece = page.getByRole("button", { name: "Over the sink: Face: move it" });
  await piece.focus();
  await page.keyboard.press("Shift+ArrowRight");
  const hand = page.locator(".cutting-hand");
  await expect.poll(() => hand.textContent()).toMatch(/By hand: it fits\./);
  await hand.getByRole("button", { name: "Keep it there" }).click();
  await saved(page);
  const laid = page.locator(".cutting-laid", { hasText: "Over the sink: Face" });
  await laid.waitFor();
  expect(await laid.textContent()).toMatch(/1 piece of \d+ pieces? lies where you laid it/);
  await ended(page);
  await page.keyboard.press("Control+z");
  await expect.poll(() => laid.count()).toBe(0);
  await page.keyboard.press("Control+Shift+z");
  await laid.waitFor();
  await saved(page);
  await page.reload();
  await laid.waitFor();
  await laid.getByRole("button", { name: /Let it go/ }).click();
  await expect.poll(() => laid.count()).toBe(0);
  expect(errors).toEqual([]);
});

test("cuts that are made leave their pieces out of the plan, and the rest in stock", async () => {
  const { page, errors } = await firstVisit(harness);
  await openCutting(page);
  await ended(page);
  const cloth = page.locator(".cutting-cloth", {
    has: page.getByRole("heading", { name: "Ticking stripe" }),
  });
  const before = Number(/(\d+) pieces?/.exec((await cloth.textContent()) ?? "")?.[1]);
  await cloth.locator("summary", { hasText: "Cuts in their order" }).first().click();
  const rows = cloth.locator("details[open] tbody tr");
  const count = await rows.count();
  await rows
    .nth(count - 1)
    .getByRole("checkbox")
    .check();
  const left = cloth.getByLabel("Left on the bolt, measured");
  await left.fill("20");
  await cloth.getByRole("button", { name: /^Cuts? 1.* (is|are) made$/ }).click();
  await saved(page);
  // The rest is planned anew by a worker, which others on the machine may hold up.
  await cloth.getByText("All its pieces are cut.").waitFor();
  expect(before).toBeGreaterThan(0);
  await page.locator("#stock-title button").click();
  const names = await page
    .locator("#stock")
    .getByLabel("Name")
    .evaluateAll((all) => all.map((one) => (one as HTMLInputElement).value));
  expect(names.join()).toContain("left on the bolt");
  expect(errors).toEqual([]);
});

test("what would save cloth is tried, and what can be is done at a press; what is left when all is cut lies in the shop", async () => {
  const { page } = await firstVisit(harness);
  // The demonstration is cut from its cloths as well as can be. A wider lining would save some here.
  await page.setInputFiles('input[type="file"]', {
    name: "three.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(threeWindows())),
  });
  await page.locator("#cutting-title button").click();
  await page.locator(".bolt-svg").first().waitFor();
  await ended(page);
  await page.getByRole("button", { name: "Try the usual ways" }).click();
  await page.locator(".savings li").first().waitFor({ timeout: 180_000 });
  // Next to the best plan found, what is left to gain may be cloth of another width: nothing to press then.
  const press = page.locator(".savings button").first();
  if (await press.isVisible()) {
    await press.click();
    await saved(page);
    await ended(page);
  }
  await page.getByRole("button", { name: "All is cut: lay what is left into the shop" }).click();
  await saved(page);
  await ended(page);
  await page.getByRole("heading", { name: "All is cut", exact: true }).waitFor();
  await page.locator("#stock-title button").click();
  const inShop = page.locator("#stock .room-list li", { hasText: ", lot " });
  await expect.poll(() => inShop.count()).toBeGreaterThan(0);
  // Undone, nothing of it lies there.
  await page.keyboard.press("ControlOrMeta+z");
  await expect.poll(() => inShop.count()).toBe(0);
});

test("the bolts scroll and the page does not, on a desk and on a phone", async () => {
  const { page, errors } = await firstVisit(harness, { viewport: { width: 1280, height: 900 } });
  await openCutting(page);
  await ended(page);
  for (const viewport of [page.viewportSize(), { width: 390, height: 844 }]) {
    if (viewport) await page.setViewportSize(viewport);
    const over = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    await expect.poll(over).toBeLessThanOrEqual(0);
    const rooms = await page
      .locator(".bolt-room")
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().right <= window.innerWidth));
    expect(rooms.length).toBeGreaterThan(0);
    expect(rooms.every(Boolean)).toBe(true);
  }
  expect(errors).toEqual([]);
  await page.context().close();
});

test("on a phone a piece that was chosen follows the finger", async () => {
  const { page, errors } = await firstVisit(harness, {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await openCutting(page);
  await ended(page);
  const piece = page.getByRole("button", { name: "Over the sink: Face: move it" });
  await piece.scrollIntoViewIfNeeded();
  await piece.focus();
  const box = await piece.boundingBox();
  if (box === null) throw new Error("the piece is not there");
  const from = [Math.min(300, box.x + box.width / 2), box.y + box.height / 2] as const;
  await dragByFinger(page, from, [40, 0]);
  const hand = page.locator(".cutting-hand");
  await expect.poll(() => hand.textContent()).toMatch(/By hand: it fits\./);
  expect(errors).toEqual([]);
});
