import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { WEB } from "../../scripts/build-web.mjs";
import { newJob } from "../../src/job/index.ts";
import { serve } from "../../src/server/index.ts";
import { type Harness, startBrowser } from "./browser.ts";
import {
  DESK,
  demo,
  field,
  firstVisit,
  KEEPS_FILES,
  openShade,
  pdfText,
  saved,
  sectionTitle,
  usable,
} from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

test("after the first visit everything works without a network, the workbook included", async () => {
  const { page, errors } = await firstVisit(harness, KEEPS_FILES);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.context().setOffline(true);
  await page.reload();
  await usable(page);
  await demo(page).waitFor();
  await openShade(page, harness.url, "kitchen-sink");
  await field(page, "Width at the bottom").fill("41 3/4");
  await field(page, "Width at the bottom").blur();
  await saved(page);
  await page.reload();
  expect(await field(page, "Width at the bottom").inputValue()).toBe("41 3/4");
  await sectionTitle(page, "make").click();
  const downloading = page.waitForEvent("download");
  await page.getByRole("button", { name: "Download this shade’s workbook" }).click();
  expect((await pdfText(await downloading)).text).toContain("Over the sink");
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a newer release waits until the maker asks for it", async () => {
  const folder = mkdtempSync(join(tmpdir(), "shadewright-release-"));
  cpSync(WEB, folder, { recursive: true });
  const serving = await serve({ planner: folder, port: 0 });
  const { page } = await harness.open({ locale: "en-US", viewport: DESK });
  await page.goto(serving.url);
  await usable(page);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await usable(page);

  for (const ending of ["", ".gz", ".br"])
    rmSync(join(folder, `service-worker.js${ending}`), { force: true });
  const worker = readFileSync(join(WEB, "service-worker.js"), "utf8");
  writeFileSync(join(folder, "service-worker.js"), worker.replace(/"[0-9a-f]{16}"/, '"next"'));
  await page.reload();
  const notice = page.getByRole("status").filter({ hasText: "A newer Shadewright is ready" });
  await notice.waitFor();
  const reloaded = page.waitForEvent("load");
  await notice.getByRole("button", { name: "Change to it" }).click();
  await reloaded;
  await usable(page);
  await expect.poll(() => page.evaluate(() => caches.keys())).toHaveLength(1);
  expect(await notice.count()).toBe(0);
  await page.context().close();
  await serving.close();
  rmSync(folder, { recursive: true });
});

test("the planner can be installed: icons of the sizes that are promised, files that it opens", async () => {
  const { page, errors } = await firstVisit(harness, KEEPS_FILES);
  const found = await page.evaluate(async () => {
    const address = document.querySelector<HTMLLinkElement>("link[rel=manifest]")?.href ?? "";
    const manifest = await (await fetch(address)).json();
    const icons = await Promise.all(
      manifest.icons
        .filter(({ type }: { type: string }) => type === "image/png")
        .map(async ({ src, sizes, purpose }: Record<"src" | "sizes" | "purpose", string>) => {
          const bitmap = await createImageBitmap(await (await fetch(new URL(src, address))).blob());
          return { purpose, promised: sizes, is: `${bitmap.width}x${bitmap.height}` };
        }),
    );
    return { id: manifest.id, icons, handlers: manifest.file_handlers.length };
  });
  expect(found.id).toBe("./");
  expect(found.handlers).toBe(1);
  expect(found.icons.map(({ purpose }) => purpose)).toEqual(["any", "any", "maskable"]);
  for (const { promised, is } of found.icons) expect(is).toBe(promised);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("without a network the planner says so, and that nothing is lacking", async () => {
  const { page } = await firstVisit(harness, KEEPS_FILES);
  await page.context().setOffline(true);
  const notice = page.getByRole("status").filter({ hasText: "No network" });
  await notice.waitFor();
  await page.context().setOffline(false);
  await notice.waitFor({ state: "detached" });
  await page.context().close();
});

test("a file that another app shares is opened", async () => {
  const { page, errors } = await firstVisit(harness, KEEPS_FILES);
  await page.evaluate(() => navigator.serviceWorker.ready);
  await page.reload();
  await usable(page);
  const job = { ...newJob({ id: "from-afar", name: "Shared from afar", system: "metric" }) };
  // The device posts the file to the address of the manifest; here the page does it in its place.
  await page.evaluate(async (text) => {
    const manifest = await (await fetch("./manifest.webmanifest")).json();
    const { action, method, params } = manifest.share_target;
    const body = new FormData();
    body.set(params.files[0].name, new File([text], "afar.json", { type: "application/json" }));
    await fetch(action, { method, body, redirect: "manual" });
  }, JSON.stringify(job));
  await page.reload();
  await page.getByRole("heading", { level: 1, name: "Shared from afar" }).waitFor({ state: "attached" });
  // Opened once: the next start finds nothing.
  expect(await page.evaluate(() => caches.has("shared-files"))).toBe(false);
  expect(errors).toEqual([]);
  await page.context().close();
});

test("a file with which the installed planner is started is opened", async () => {
  const { page, errors } = await harness.open({ locale: "en-US", viewport: DESK });
  const job = newJob({ id: "from-folder", name: "Opened from its folder", system: "metric" });
  // The device hands the file over; here the page does it in its place.
  await page.addInitScript((text) => {
    const file = new File([text], "folder.json", { type: "application/json" });
    const launchQueue = {
      setConsumer: (consume: (launch: object) => void) => consume({ files: [{ getFile: async () => file }] }),
    };
    Object.defineProperty(window, "launchQueue", { value: launchQueue });
  }, JSON.stringify(job));
  await page.goto(harness.url);
  await page
    .getByRole("heading", { level: 1, name: "Opened from its folder" })
    .waitFor({ state: "attached" });
  expect(errors).toEqual([]);
  await page.context().close();
});
