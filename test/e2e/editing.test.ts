import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { drawing, field, firstVisit, openShade, saved, sectionTitle } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("the drawing follows each keystroke; one undo takes the whole field back", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  const before = await drawing(page);
  const width = field(page, "Width in the middle");
  await width.click();
  await width.press("ControlOrMeta+a");
  await width.pressSequentially("30 1/4");
  await page
    .locator(".fig", { hasText: /29.3.4.in/ })
    .first()
    .waitFor();
  expect(await drawing(page)).not.toEqual(before);
  await page.keyboard.press("ControlOrMeta+z");
  expect(await width.inputValue()).toBe("35 3/4");
  expect(await drawing(page)).toEqual(before);
  await page.getByRole("status").filter({ hasText: "Undone: Width in the middle" }).waitFor();
  await page.keyboard.press("ControlOrMeta+Shift+z");
  expect(await width.inputValue()).toBe("30 1/4");
  await saved(page);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("text that cannot be read changes nothing and is not lost", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  const before = await drawing(page);
  const width = field(page, "Width at the top");
  await width.fill("35 or so");
  await page.keyboard.press("Tab");
  await page.getByRole("alert").filter({ hasText: "is not a length" }).waitFor();
  expect(await width.getAttribute("aria-invalid")).toBe("true");
  await sectionTitle(page, "measure").click();
  await sectionTitle(page, "measure").click();
  expect(await width.inputValue()).toBe("35 or so");
  expect(await drawing(page)).toEqual(before);
  await width.focus();
  await page.keyboard.press("Escape");
  expect(await width.inputValue()).toBe("35 7/8");
  await page.context().close();
});

test("a finding's remedy is pressed, the finding goes, and undo brings it back", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url, "kitchen-sink");
  const finding = page.locator('[data-finding="measure.out-of-square"]');
  await finding.waitFor();
  await finding.getByRole("button", { name: "Mount it outside the opening" }).click();
  await finding.waitFor({ state: "detached" });
  expect(await page.getByRole("radio", { name: "Outside" }).isChecked()).toBe(true);
  await page.getByRole("button", { name: "Undo: Mount it outside the opening" }).click();
  await finding.waitFor();
  expect(await page.getByRole("radio", { name: "Inside" }).isChecked()).toBe(true);
  await page.context().close();
});

// 35 3/4 in = 908.05 mm, 35 1/4 in = 895.35 mm: NIST SP 811 (2008), appendix B.8, 1 in = 25.4 mm exactly.
test("inches become millimetres everywhere, and come back unchanged", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  const inches = await drawing(page);
  await page.getByRole("radio", { name: "mm" }).first().check();
  expect(await field(page, "Width in the middle").inputValue()).toBe("908.05");
  await page
    .locator(".fig", { hasText: /895.mm/ })
    .first()
    .waitFor();
  expect((await drawing(page)).join(" ")).toContain("895\u00a0mm");
  expect(await page.locator(".shade-walk .fig").allTextContents()).not.toContainEqual(
    expect.stringMatching(/\din\b/),
  );
  await page.getByRole("radio", { name: "in", exact: true }).first().check();
  expect(await field(page, "Width in the middle").inputValue()).toBe("35 3/4");
  expect(await drawing(page)).toEqual(inches);
  await page.context().close();
});

test("a figure shows its working: formula, values, source; its fields change it", async () => {
  const { page } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.locator('.target[data-figure="measure.finished-width"]').click();
  const slip = page.getByRole("complementary", { name: /Working: Finished width/ });
  await slip.waitFor();
  const words = await slip.textContent();
  expect(words).toContain("W = w − a");
  expect(words).toMatch(/35.3⁄4.in/);
  expect(words).toContain("About fifteen trade measuring guides");
  await slip.getByRole("textbox", { name: /Taken off the width/ }).fill("1");
  await page
    .locator(".fig", { hasText: /34.3.4.in/ })
    .first()
    .waitFor();
  await slip.getByRole("button", { name: /^reset.*Taken off the width/ }).click();
  await page
    .locator(".fig", { hasText: /35.1.4.in/ })
    .first()
    .waitFor();
  await slip.getByRole("button", { name: "Close the slip" }).click();
  await slip.waitFor({ state: "detached" });
  await page.context().close();
});

test("a step ticked at the bench stays ticked", async () => {
  const { page } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row/parlour-left/bench`);
  const where = page.locator(".bench-where");
  await where.filter({ hasText: "step 1 of" }).waitFor();
  await page.getByRole("button", { name: "Done", exact: true }).click();
  await where.filter({ hasText: "step 2 of" }).waitFor();
  await saved(page);
  await page.reload();
  await where.filter({ hasText: "step 2 of" }).filter({ hasText: "1 done" }).waitFor();
  await page.context().close();
});

test("a window, a room and a cloth of one's own, and the way back", async () => {
  const { page } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await sectionTitle(page, "rooms").click();
  await page.getByRole("button", { name: "Add a room" }).click();
  const room = page.locator(".room-block").last();
  await room.getByRole("textbox", { name: "New window" }).fill("Skylight");
  await room.getByRole("textbox", { name: "Width" }).fill("22");
  await room.getByRole("textbox", { name: "Length" }).fill("30");
  await room.getByRole("button", { name: "Add it" }).click();
  await page.getByRole("heading", { name: "Room 6, Skylight" }).waitFor();

  await sectionTitle(page, "cloth").click();
  await page.getByRole("link", { name: "All fabrics of the job" }).click();
  await page.getByRole("button", { name: "Add a fabric of your own" }).click();
  await page.getByRole("heading", { name: /^My fabric/ }).waitFor();
  // It begins empty: nothing of an example counts as the maker's, and it says what it waits for.
  await page.getByText("Not planned with yet. Not known: usable width and weight.").waitFor();
  await field(page, "Usable width selvages taken off").last().fill("54");
  await field(page, "Weight").last().fill("7");
  await expect.poll(() => page.getByText(/^Not planned with yet/).count()).toBe(0);
  await saved(page);
  await page.goBack();
  await page.getByRole("combobox", { name: "Face" }).selectOption({ label: "My fabric" });
  await page.getByText(/^My fabric,/).waitFor();
  await saved(page);
  await page.context().close();
});
