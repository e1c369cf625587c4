import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { field, firstVisit, openShade, saved } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("which lock for eight cords of 1.4 mm is answered with no job at all", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.getByRole("link", { name: "Ask a question" }).click();
  const part = page.locator(".ask-part", { hasText: "Which lock takes my cords?" });
  await part.waitFor();
  await field(page, "Cords").fill("8");
  expect(await part.textContent()).toMatch(/Six-slot lock: takes them/);
  expect(await part.textContent()).toMatch(/Four-slot lock: does not.*at most 7 cords; you have 8/);
  await field(page, "Cords").fill("many");
  await expect.poll(() => part.getByRole("alert").textContent()).toMatch(/a whole number/);
  expect(errors).toEqual([]);
});

test("a question in one’s own words is answered from numbers that are typed, or from the list", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.getByRole("link", { name: "Ask a question" }).click();
  const part = page.locator(".ask-part", { hasText: "What do you want to know?" });
  await part.waitFor();
  await field(page, "Your question, in your own words").fill("can the lock be an eye");
  const first = part.locator("[data-question]").first();
  await expect.poll(() => first.getAttribute("data-question")).toBe("lock-as-eye");
  expect(await first.textContent()).toMatch(/No\. Every column keeps an eye of its own.*5 columns, 5 eyes/);
  await part.locator("summary").click();
  await part.getByRole("textbox", { name: "Finished width" }).fill("60");
  await expect.poll(() => first.textContent()).toMatch(/7 columns, 7 eyes/);
  await part.getByRole("textbox", { name: "Finished width" }).fill("0");
  await expect.poll(() => part.getByRole("alert").count()).toBe(1);
  await part.getByRole("textbox", { name: "Finished width" }).fill("36");
  await field(page, "Your question, in your own words").fill("zxqv");
  await part.getByRole("status").waitFor();
  await part.getByRole("button", { name: "May I sell it?" }).click();
  await expect.poll(() => part.textContent()).toMatch(/United States\d+ failed/);
  expect(errors).toEqual([]);
});

test("a question is asked of the shade on the page, and its answer opens the drawing that it speaks of", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.locator("#ask .chapter-title button").click();
  await field(page, "Your question about this shade").fill("how far apart are the rings");
  const answer = page.locator('#ask [data-question="rows-apart"]');
  // The figure of the demonstration's own shade, as its sentence has it.
  const flat = (text: string | null) => (text ?? "").replace(/\s+/g, " ");
  const sentence = flat(await page.locator("#shape .chapter-sentence").textContent());
  const [, apart = "no figure"] = /rings ?(\d.*? in) ?apart/.exec(sentence) ?? [];
  await expect.poll(async () => flat(await answer.textContent())).toContain(`then every ${apart}`);
  await answer.getByRole("button", { name: "See it on the drawing: Back" }).click();
  await page.locator("#tab-back[aria-selected=true]").waitFor();
  expect(errors).toEqual([]);
});

test("from the page of a job a question is one press away", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.getByRole("link", { name: "Ask a question" }).click();
  await field(page, "Your question, in your own words").waitFor();
  expect(errors).toEqual([]);
});

test("lessons of typed numbers fill the screen, are turned by keys, and close", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.getByRole("link", { name: "Ask a question" }).click();
  await page.getByRole("button", { name: "Show as lessons" }).click();
  const view = page.getByRole("dialog");
  await view.getByRole("heading", { name: "Rows and folds" }).waitFor();
  await expect.poll(() => view.locator("svg").count()).toBe(2);
  for (let turned = 0; turned < 3; turned++) await page.keyboard.press("ArrowRight");
  await view.getByRole("heading", { name: "Where the lock sits" }).waitFor();
  await expect.poll(() => view.locator("svg").textContent()).toMatch(/A.*lock/s);
  expect(await view.textContent()).toMatch(/strangle small children/);
  await page.keyboard.press("Escape");
  await expect.poll(() => view.count()).toBe(0);
  expect(errors).toEqual([]);
});

test("cords are as long as the sizes say, whose edge may be narrow and whose first row lies within", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.getByRole("link", { name: "Ask a question" }).click();
  const part = page.locator(".ask-part", { hasText: "How long are my cords?" });
  await field(page, "Edge columns in from the edge").fill("1");
  await field(page, "For knots, each").fill("0");
  // Eyes 1, 9 1/2, 18, 26 1/2 and 35 in, the lock at 30 3/4 in: 60 − 3 3/4 + 29 3/4 + 30 = 116 in for the first.
  const first = part.getByRole("row", { name: /^Cord 1/ });
  expect((await first.textContent())?.replaceAll("\u00a0", " ")).toMatch(/29 3⁄4 in of run116 in/);
  await field(page, "Hem to the bottom row").fill("61");
  await expect.poll(() => part.getByRole("alert").textContent()).toMatch(/too much; at most 60.in/);
  expect(await first.count()).toBe(0);
  expect(errors).toEqual([]);
});

test("a symptom names its causes, and a hem is levelled by what was measured", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.locator("#ask-title button").click();
  const ask = page.locator("#ask");
  await ask.getByLabel("What is wrong?").selectOption({ label: "It is hard to raise" });
  await expect.poll(() => ask.locator("[data-cause]").count()).toBeGreaterThan(1);
  await ask.getByText("Level the hem").click();
  const boxes = ask.locator(".ask-level input");
  await expect.poll(() => boxes.count()).toBeGreaterThan(1);
  const count = await boxes.count();
  for (let i = 0; i < count; i++) await boxes.nth(i).fill(i === 1 ? "3/4" : "1");
  await expect.poll(() => ask.textContent()).toMatch(/Column 2: shorten its cord by/);
  expect(errors).toEqual([]);
});

test("another set of parts is pressed from the list of all that go", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.locator("#lift-title button").click();
  const lift = page.locator("#lift");
  await lift.getByText("What else could raise it?").click();
  const use = lift.getByRole("button", { name: /^Use.*Low-voltage motor/ }).first();
  await use.click();
  await expect.poll(() => lift.locator(".chapter-sentence").textContent()).toMatch(/motor/i);
  await page.getByRole("tab", { name: "Forces" }).click();
  await expect.poll(() => page.locator(".sheet-svg").textContent()).toMatch(/Risen by/);
  await saved(page);
  expect(errors).toEqual([]);
});

test("parts come from a list; what cannot be used is told by line, the rest is there to choose", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator("#hardware-title button").click();
  const cords = page.locator("#hardware details.more-settings", { hasText: /^Cords/ });
  await cords.locator("summary").click();
  await cords.locator('input[type="file"]').setInputFiles({
    name: "cords.csv",
    mimeType: "text/csv",
    buffer: Buffer.from("name,diameterMm,breakingN\nBench braid,1.6,500\nRope,60,9000\n"),
  });
  await expect
    .poll(() => cords.getByRole("status").textContent())
    .toMatch(/1 taken.*Line 3, diameterMm: “60”/);
  await expect.poll(() => cords.locator(".part-card h3", { hasText: "Bench braid" }).count()).toBe(1);
  await saved(page);
  expect(errors).toEqual([]);
});
