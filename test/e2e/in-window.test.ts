import { readFile } from "node:fs/promises";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { violations } from "./axe.ts";
import { type Harness, SOFTWARE_GL, startBrowser } from "./browser.ts";
import { firstVisit, openShade, PHONE } from "./planner.ts";
import { pngOf } from "./png.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser(SOFTWARE_GL);
});
afterAll(() => harness.close());

/** A wall with a window of the measured size in it, 35 3/4 by 60 1/2 in, seen squarely. */
const [WIDTH, HEIGHT] = [640, 480];
const [LEFT, TOP, RIGHT, BOTTOM] = [240, 90, 420, 90 + (180 * 60.5) / 35.75];
const ROOM = pngOf(WIDTH, HEIGHT, (x, y) =>
  x > LEFT && x < RIGHT && y > TOP && y < BOTTOM ? [150, 190, 220] : [205, 198, 186],
);

async function openInWindow(page: Page) {
  await openShade(page, harness.url, "parlour-left");
  await page.getByRole("tab", { name: "Picture" }).click();
  await page.getByRole("button", { name: "turn it" }).click();
  await page.getByText("In your window").click();
  await page.locator(".in-window").waitFor();
}

/** Drops a file on the page, as from a folder. */
async function dropPhoto(page: Page, name: string, bytes: Buffer) {
  const data = await page.evaluateHandle(
    ([base64, fileName]) => {
      const transfer = new DataTransfer();
      const raw = Uint8Array.from(atob(base64 as string), (letter) => letter.charCodeAt(0));
      transfer.items.add(new File([raw], fileName as string, { type: "image/png" }));
      return transfer;
    },
    [bytes.toString("base64"), name],
  );
  await page.dispatchEvent(".in-window", "drop", { dataTransfer: data });
}

const corner = (page: Page, name: string) =>
  page.getByRole("button", { name: `${name} corner of the opening` });
const CORNERS = {
  "Upper left": [LEFT, TOP],
  "Upper right": [RIGHT, TOP],
  "Lower right": [RIGHT, BOTTOM],
  "Lower left": [LEFT, BOTTOM],
} as const;

/** Pixels of the shade's own canvas that are not clear. */
async function covered(page: Page): Promise<number> {
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
  return page.locator(".in-photo-shade").evaluate((canvas) => {
    const copy = document.createElement("canvas");
    copy.width = 160;
    copy.height = 120;
    const draw = copy.getContext("2d");
    draw?.drawImage(canvas as HTMLCanvasElement, 0, 0, 160, 120);
    const { data } = draw?.getImageData(0, 0, 160, 120) ?? { data: [] };
    let seen = 0;
    for (let k = 3; k < data.length; k += 4) if ((data[k] ?? 0) > 200) seen++;
    return seen;
  });
}

test("a photo is dropped, its corners are dragged, and the picture is saved for the client", async () => {
  const { page, errors } = await firstVisit(harness);
  await openInWindow(page);
  await dropPhoto(page, "room.png", ROOM);
  const photo = page.locator(".in-photo");
  await photo.waitFor();
  const box = await photo.boundingBox();
  if (!box) throw new Error("invalid page: no photo");
  for (const [name, [x, y]] of Object.entries(CORNERS)) {
    const from = await corner(page, name).boundingBox();
    if (!from) throw new Error("invalid page: no corner");
    await page.mouse.move(from.x + from.width / 2, from.y + from.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + (x / WIDTH) * box.width, box.y + (y / HEIGHT) * box.height, { steps: 3 });
    await page.mouse.up();
  }
  await page.getByText("agree with its measured size").waitFor();
  // The shade fills the opening but for its clearance: 180 × 304.6 of 640 × 480 pixels.
  const share = ((RIGHT - LEFT) * (BOTTOM - TOP)) / (WIDTH * HEIGHT);
  await expect.poll(() => covered(page), { timeout: 180_000 }).toBeGreaterThan(0.9 * share * 160 * 120);
  expect(await covered(page)).toBeLessThan(1.06 * share * 160 * 120);
  expect(await violations(page)).toEqual([]);
  const before = await covered(page);
  const lowerLeft = corner(page, "Lower left");
  await lowerLeft.focus();
  for (let k = 0; k < 8; k++) await page.keyboard.press("Shift+ArrowUp");
  await expect.poll(() => covered(page)).toBeLessThan(before);
  const [download] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "Save the picture" }).click(),
  ]);
  const saved = await readFile(await download.path());
  expect(download.suggestedFilename()).toBe("in-the-window.png");
  expect([saved.readUInt32BE(16), saved.readUInt32BE(20)]).toEqual([WIDTH, HEIGHT]);
  expect(errors).toEqual([]);
});

test("on a phone a finger drags the corners; corners that cross are refused in words", async () => {
  const { page, errors } = await firstVisit(harness, {
    viewport: PHONE,
    hasTouch: true,
    isMobile: true,
    colorScheme: "dark",
  });
  await openInWindow(page);
  await page
    .locator('.in-window input[type="file"]')
    .setInputFiles({ name: "room.png", mimeType: "image/png", buffer: ROOM });
  const photo = page.locator(".in-photo");
  await photo.waitFor();
  await corner(page, "Lower right").scrollIntoViewIfNeeded();
  await corner(page, "Upper left").scrollIntoViewIfNeeded();
  const box = await photo.boundingBox();
  const from = await corner(page, "Upper left").boundingBox();
  if (!box || !from) throw new Error("invalid page: no photo");
  const client = await page.context().newCDPSession(page);
  const touch = (type: "touchStart" | "touchMove" | "touchEnd", x: number, y: number) =>
    client.send("Input.dispatchTouchEvent", { type, touchPoints: type === "touchEnd" ? [] : [{ x, y }] });
  const style = () => corner(page, "Upper left").getAttribute("style");
  const was = await style();
  await touch("touchStart", from.x + from.width / 2, from.y + from.height / 2);
  await touch("touchMove", box.x + 0.9 * box.width, box.y + 0.5 * box.height);
  await touch("touchMove", box.x + 0.95 * box.width, box.y + 0.95 * box.height);
  await touch("touchEnd", 0, 0);
  await expect.poll(style).not.toBe(was);
  await page.getByText("do not go round an opening").waitFor();
  expect(await page.getByRole("button", { name: "Save the picture" }).isDisabled()).toBe(true);
  expect(errors).toEqual([]);
});

test("what is no picture, or far too large a one, is refused with what would do", async () => {
  const { page, errors } = await firstVisit(harness);
  await openInWindow(page);
  await dropPhoto(page, "notes.png", Buffer.from("<svg onload='alert(1)'/>"));
  await page.getByRole("alert").getByText("JPEG, PNG or WebP will do").waitFor();
  const bomb = Buffer.from(ROOM);
  bomb.writeUInt32BE(60_000, 16);
  bomb.writeUInt32BE(60_000, 20);
  await dropPhoto(page, "bomb.png", bomb);
  await page.getByRole("alert").getByText("60000 × 60000 pixels").waitFor();
  expect(await page.locator(".in-photo").count()).toBe(0);
  expect(errors).toEqual([]);
});
