import { readFile } from "node:fs/promises";
import { gzipSync } from "node:zlib";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { violations } from "./axe.ts";
import { type Harness, SOFTWARE_GL, startBrowser } from "./browser.ts";
import { firstVisit, openShade, PHONE } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser(SOFTWARE_GL);
});
afterAll(() => harness.close());

async function openLive(page: Page, shadeId?: string) {
  await openShade(page, harness.url, shadeId);
  await page.getByRole("tab", { name: "Picture" }).click();
  await page.getByRole("button", { name: "turn it" }).click();
  const live = page.getByRole("application");
  await live.waitFor();
  await expect
    .poll(async () => Number(await live.getAttribute("data-heights")), { timeout: 180_000 })
    .toBeGreaterThan(0);
  return live;
}

/** Whether a film can be played: it has a picture, and goes on for a while. In a page of its own, which forbids no film. */
async function played(page: Page, film: Buffer): Promise<{ isWide: boolean; lasts: boolean }> {
  const viewer = await page.context().newPage();
  const type = film.toString("latin1", 4, 8) === "ftyp" ? "video/mp4" : "video/webm";
  const seen = await viewer.evaluate(
    async (address) => {
      const video = document.createElement("video");
      await new Promise((known, failed) => {
        video.onloadeddata = known;
        video.onerror = () => failed(new Error(`invalid film: ${video.error?.message}`));
        video.src = address;
      });
      return { isWide: video.videoWidth > 100 && video.videoHeight > 100, lasts: video.duration > 1 };
    },
    `data:${type};base64,${film.toString("base64")}`,
  );
  await viewer.close();
  return seen;
}

/** Distinct colours in the middle of what is shown, and the picture itself. */
async function seen(page: Page): Promise<{ colours: number; url: string }> {
  await page.evaluate(
    () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))),
  );
  // Coarser while it moves: as it stays is what is compared.
  return page.locator('.live-canvas[data-drawn="rest"]').evaluate((canvas) => {
    const copy = document.createElement("canvas");
    copy.width = 120;
    copy.height = 160;
    const draw = copy.getContext("2d");
    draw?.drawImage(canvas as HTMLCanvasElement, 0, 0, 120, 160);
    const { data } = draw?.getImageData(0, 0, 120, 160) ?? { data: [] };
    const colours = new Set<number>();
    for (let k = 0; k < data.length; k += 4)
      colours.add(((data[k] ?? 0) << 16) | ((data[k + 1] ?? 0) << 8) | (data[k + 2] ?? 0));
    return { colours: colours.size, url: copy.toDataURL() };
  });
}

test("what is not moved stays as fine as it is while the cloth is worked out at more heights", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.evaluate(() => {
    const shares: string[] = [];
    Object.assign(window, { shares });
    new MutationObserver((all) => {
      for (const { target } of all)
        if (target instanceof HTMLCanvasElement && target.classList.contains("live-canvas"))
          shares.push((target.width / target.clientWidth).toFixed(1));
    }).observe(document, { subtree: true, attributeFilter: ["width"] });
  });
  await openLive(page);
  await page.locator('.live-room[data-state="done"]').waitFor();
  await page.locator('.live-canvas[data-drawn="rest"]').waitFor();
  const shares = await page.evaluate(() => (window as unknown as { shares: string[] }).shares);
  expect(shares.at(-1)).toBe("1.0");
  expect(shares.slice(shares.indexOf("1.0"))).not.toContain("0.5");
  expect(errors).toEqual([]);
  await page.context().close();
});

test("the picture is turned by mouse and keys, raised by its slider, lit from the window", async () => {
  const { page, errors } = await firstVisit(harness);
  const live = await openLive(page);
  const front = await seen(page);
  expect(front.colours).toBeGreaterThan(200);
  // As many points as are shown at rest, half of them each way as it moves.
  const drawn = () =>
    page.locator(".live-canvas").evaluate((element) => {
      const canvas = element as HTMLCanvasElement;
      return `${canvas.dataset.drawn} ${(canvas.width / canvas.clientWidth).toFixed(1)}`;
    });
  await expect.poll(drawn, { timeout: 180_000 }).toBe("rest 1.0");
  expect(await violations(page)).toEqual([]);
  const box = await live.boundingBox();
  if (!box) throw new Error("invalid page: nothing is shown");
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 90, box.y + box.height / 2, { steps: 4 });
  let steps = 0;
  await expect
    .poll(
      async () => {
        await page.mouse.move(box.x + box.width / 2 + 90 + (++steps % 2), box.y + box.height / 2);
        await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(resolve)));
        return drawn();
      },
      { timeout: 180_000 },
    )
    .toBe("moving 0.5");
  await page.mouse.up();
  const turned = await seen(page);
  expect(turned.url).not.toBe(front.url);
  await live.focus();
  await page.keyboard.press("Home");
  expect((await seen(page)).url).not.toBe(turned.url);
  await page.keyboard.press("End");
  const back = await seen(page);
  await page.keyboard.press("+");
  expect((await seen(page)).url).not.toBe(back.url);
  await page.keyboard.press("Home");
  const lowered = await seen(page);
  await page.getByRole("slider", { name: "Raise" }).focus();
  for (let k = 0; k < 12; k++) await page.keyboard.press("ArrowUp");
  const raised = await seen(page);
  expect(raised.url).not.toBe(lowered.url);
  await page.getByText("Daylight").click();
  expect((await seen(page)).url).not.toBe(raised.url);
  const [model] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "model", exact: true }).click(),
  ]);
  const glb = await readFile(await model.path());
  // Binary glTF begins with its name and version 2 (ISO/IEC 12113, §4).
  expect([glb.toString("latin1", 0, 4), glb.readUInt32LE(4)]).toEqual(["glTF", 2]);
  const [clip] = await Promise.all([
    page.waitForEvent("download"),
    page.getByRole("button", { name: "clip of a turn" }).click(),
  ]);
  const film = await readFile(await clip.path());
  // A film is MP4, whose first box is “ftyp” (ISO/IEC 14496-12, 4.3), or WebM, which begins with EBML’s mark (RFC 8794,
  // 11.2.1). A busy machine has fewer frames of it.
  expect([film.toString("latin1", 4, 8), film.toString("hex", 0, 4)]).toSatisfy(
    ([mp4, webm]: string[]) => mp4 === "ftyp" || webm === "1a45dfa3",
  );
  expect(film.length).toBeGreaterThan(1000);
  expect(await played(page, film)).toMatchObject({ isWide: true, lasts: true });
  await page.getByRole("button", { name: "still picture" }).click();
  await page.locator(".sheet-svg").waitFor();
  expect(errors).toEqual([]);
});

test("on a phone a finger turns it, and dark paper changes nothing of its colours", async () => {
  const open = async (colorScheme: "light" | "dark") => {
    const { page, errors } = await firstVisit(harness, {
      viewport: PHONE,
      hasTouch: true,
      colorScheme,
      reducedMotion: "reduce",
    });
    await openLive(page, "parlour-right");
    await page.locator('.live-room[data-state="done"]').waitFor({ timeout: 180_000 });
    return { page, errors };
  };
  const [light, dark] = [await open("light"), await open("dark")];
  expect((await seen(dark.page)).url).toBe((await seen(light.page)).url);
  const front = await seen(light.page);
  await light.page.getByRole("button", { name: "Back", exact: true }).click();
  expect((await seen(light.page)).url).not.toBe(front.url);
  expect([...light.errors, ...dark.errors]).toEqual([]);
});

test("on a phone it is raised by the slider beside it: there is no hem to pull", async () => {
  const { page, errors } = await firstVisit(harness, { viewport: PHONE, hasTouch: true, isMobile: true });
  await openLive(page, "parlour-right");
  const track = await page.locator(".raise-track").boundingBox();
  expect(track?.width ?? 0).toBeGreaterThanOrEqual(43.5);
  expect(track?.height ?? 0).toBeGreaterThanOrEqual(44);
  if (!track) throw new Error("no slider");
  await page.touchscreen.tap(track.x + track.width / 2, track.y + track.height / 3);
  const raised = async () => Number(await page.getByRole("slider", { name: "Raise" }).inputValue());
  await expect.poll(raised).toBeGreaterThan(0.4);
  expect(errors).toEqual([]);
});

test("turning it fetches no more than 180 kB of scripts, gzipped, and none of them before", async () => {
  const { page, errors } = await firstVisit(harness);
  await openShade(page, harness.url);
  // The still picture has a worker of its own: fetched before anyone turns it, and kept by the browser.
  const still = page.waitForResponse((response) => response.url().includes("still-worker"));
  await page.getByRole("tab", { name: "Picture" }).click();
  await page.waitForLoadState("networkidle");
  const stillAddress = (await still).url();
  const scripts = new Map<string, Promise<Buffer>>();
  page.on("response", (response) => {
    const isScript = (response.headers()["content-type"] ?? "").includes("javascript");
    const isNew = response.request().serviceWorker() === null && response.url() !== stillAddress;
    if (isScript && isNew) scripts.set(response.url(), response.body());
  });
  await page.getByRole("button", { name: "turn it" }).click();
  await page.locator('.live-room[data-state="done"]').waitFor({ timeout: 180_000 });
  const bodies = await Promise.all(scripts.values());
  const bytes = bodies.reduce((sum, body) => sum + gzipSync(body, { level: 9 }).length, 0);
  expect(bytes).toBeGreaterThan(100_000);
  expect(bytes).toBeLessThan(180_000);
  expect(errors).toEqual([]);
});

test("where the cloth cannot be worked out it says so, and the still picture is at hand", async () => {
  const { page } = await firstVisit(harness);
  await page.route("**/hang-worker*", (route) => route.abort());
  await openShade(page, harness.url);
  await page.getByRole("tab", { name: "Picture" }).click();
  await page.getByRole("button", { name: "turn it" }).click();
  await page.getByText("could not be worked out to the end").waitFor();
  await page.getByRole("button", { name: "still picture" }).click();
  await page.locator(".sheet-svg").waitFor();
});

test("without WebGL the drawn picture stays and says so", async () => {
  const { page, errors } = await firstVisit(harness);
  await page.addInitScript(() => {
    const own = HTMLCanvasElement.prototype.getContext;
    HTMLCanvasElement.prototype.getContext = function (
      this: HTMLCanvasElement,
      kind: string,
      ...rest: unknown[]
    ) {
      return kind.startsWith("webgl") ? null : Reflect.apply(own, this, [kind, ...rest]);
    } as typeof own;
  });
  await page.reload();
  await openShade(page, harness.url);
  await page.getByRole("tab", { name: "Picture" }).click();
  await page.getByRole("button", { name: "turn it" }).click();
  await page.getByText("This browser cannot draw in space").waitFor();
  await page.locator(".sheet-svg").waitFor();
  expect(errors.filter((error) => !error.includes("WebGL"))).toEqual([]);
});
