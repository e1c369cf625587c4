import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { dragByFinger, firstVisit, openShade, saved } from "./planner.ts";
import { pngOf } from "./png.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** Four squares, two and two alike. */
const CHECKED = pngOf(40, 40, (x, y) => (x < 20 === y < 20 ? [160, 40, 40] : [240, 220, 180]));

test("a photo of the cloth with its repeat marked is shown on the shade, at its scale and phase", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator("#cloths-title button").click();
  const card = page.locator("#cloths .part-card").first();
  await card.locator("summary").first().click();
  await card
    .locator('input[type="file"]')
    .setInputFiles({ name: "cloth.png", mimeType: "image/png", buffer: CHECKED });
  const frame = card.getByTestId("cloth-photo");
  await frame.locator("img").waitFor();
  await frame.scrollIntoViewIfNeeded();
  const box = await frame.boundingBox();
  if (!box) throw new Error("invalid page: no photo");
  await page.mouse.move(box.x + 1, box.y + 1);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  await expect.poll(() => card.getByLabel("Repeat’s width").inputValue()).toMatch(/^0\.4|^0\.5/);
  await saved(page);

  // The demonstration's first patterned cloth hangs in the parlour, on a half drop: two columns to a tile.
  await openShade(page, harness.url);
  const tiles = page.locator(".sheet-svg pattern");
  await expect.poll(() => tiles.count()).toBeGreaterThan(0);
  expect(await page.locator('.sheet-svg path[fill^="url(#cloth-"]').count()).toBeGreaterThan(1);
  const [width, height] = await tiles
    .first()
    .evaluate((node) => [Number(node.getAttribute("width")), Number(node.getAttribute("height"))]);
  // 27 in across and 25 1/4 in down, as the cloth's own entry says.
  expect((width ?? 0) / 2 / (height ?? 1)).toBeCloseTo(685.8 / 641.35, 2);
  expect(errors).toEqual([]);
});

/** One red square on cream, seen from the side: its right edge is farther away. */
const SLANTED = pngOf(300, 240, (x, y) => {
  const [top, bottom] = [40 + (30 * (x - 60)) / 180, 200 - (30 * (x - 60)) / 180];
  return x > 60 && x < 240 && y > top && y < bottom ? [170, 40, 40] : [240, 225, 190];
});

test("a photo taken at a slant is made straight by four corners, with how true its scale is", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator("#cloths-title button").click();
  const card = page.locator("#cloths .part-card").first();
  await card.locator("summary").first().click();
  const file = card.locator('input[type="file"]');
  await file.setInputFiles({ name: "notes.png", mimeType: "image/png", buffer: Buffer.from("no picture") });
  await card.getByRole("alert").getByText("JPEG, PNG or WebP will do").waitFor();
  await file.setInputFiles({ name: "slanted.png", mimeType: "image/png", buffer: SLANTED });
  await card.getByRole("button", { name: "Taken at a slant: make it straight" }).click();
  const frame = card.getByTestId("straighten");
  await frame.locator("img").waitFor();
  await frame.scrollIntoViewIfNeeded();
  const box = await frame.locator("img").boundingBox();
  if (!box) throw new Error("invalid page: no photo");
  const corners = {
    "Upper left": [60, 40],
    "Upper right": [240, 70],
    "Lower right": [240, 170],
    "Lower left": [60, 200],
  };
  for (const [name, [x = 0, y = 0]] of Object.entries(corners)) {
    const from = await card.getByRole("button", { name: `${name} corner of the repeat` }).boundingBox();
    if (!from) throw new Error("invalid page: no corner");
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + (x / 300) * box.width, box.y + (y / 240) * box.height, { steps: 3 });
    await page.mouse.up();
  }
  await card.getByRole("button", { name: "Make it straight", exact: true }).click();
  await card.getByText("its scale is true within about").waitFor();
  // What was a slanted figure fills the picture from edge to edge.
  const colours = await card
    .getByTestId("cloth-photo")
    .locator("img")
    .evaluate(async (image) => {
      const photo = image as HTMLImageElement;
      await photo.decode();
      const canvas = document.createElement("canvas");
      [canvas.width, canvas.height] = [photo.naturalWidth, photo.naturalHeight];
      const draw = canvas.getContext("2d");
      draw?.drawImage(photo, 0, 0);
      const at = (x: number, y: number) =>
        draw?.getImageData(Math.round(x * (canvas.width - 1)), Math.round(y * (canvas.height - 1)), 1, 1)
          .data[1] ?? 0;
      return [
        [0.03, 0.03],
        [0.97, 0.03],
        [0.97, 0.97],
        [0.03, 0.97],
        [0.5, 0.5],
      ].map(([x = 0, y = 0]) => at(x, y));
    });
  for (const green of colours) expect(green).toBeLessThan(90);
  await saved(page);
  expect(errors).toEqual([]);
});

test("the motif is placed by hand on the drawing, and by the arrow keys", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  const handle = page.locator(".motif-handle");
  const before = await handle.getAttribute("aria-label");
  const box = await handle.boundingBox();
  if (!box) throw new Error("invalid page: no handle");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 12, box.y + box.height / 2 + 30, { steps: 5 });
  await page.mouse.up();
  await expect.poll(() => handle.getAttribute("aria-label")).not.toBe(before);
  const dragged = await handle.getAttribute("aria-label");
  await handle.focus();
  await page.keyboard.press("ArrowDown");
  await expect.poll(() => handle.getAttribute("aria-label")).not.toBe(dragged);
  await page.keyboard.press("Control+z");
  await page.keyboard.press("Control+z");
  await expect.poll(() => handle.getAttribute("aria-label")).toBe(before);
  await saved(page);
  expect(errors).toEqual([]);
});

test("on a phone a finger drags the motif", async () => {
  const { page, errors } = await firstVisit(harness, {
    viewport: { width: 390, height: 844 },
    hasTouch: true,
    isMobile: true,
  });
  await openShade(page, harness.url);
  const handle = page.locator(".motif-handle");
  await handle.scrollIntoViewIfNeeded();
  const before = await handle.getAttribute("aria-label");
  const scrolled = await page.evaluate(() => window.scrollY);
  const box = await handle.boundingBox();
  if (!box) throw new Error("invalid page: no handle");
  await dragByFinger(page, [box.x + box.width / 2, box.y + box.height / 2], [10, 24]);
  await expect.poll(() => handle.getAttribute("aria-label")).not.toBe(before);
  expect(await page.evaluate(() => window.scrollY)).toBe(scrolled);
  await saved(page);
  expect(errors).toEqual([]);
});
