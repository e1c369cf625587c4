import { gzipSync } from "node:zlib";
import type { Response } from "playwright-core";
import type { Harness } from "../test/e2e/browser.ts";
import type { Figure } from "./figure.ts";
import { untilUsable } from "./usable.ts";

/** JavaScript that a first visit fetches before it can be used, gzipped; workers' scripts count too. */
export async function loadGzip(harness: Harness): Promise<Figure> {
  const { page } = await harness.open();
  const scripts = new Map<string, Promise<Buffer>>();
  const collect = (response: Response) => {
    const isScript = (response.headers()["content-type"] ?? "").includes("javascript");
    if (isScript && response.request().serviceWorker() === null) scripts.set(response.url(), response.body());
  };
  page.on("response", collect);
  await page.goto(harness.url);
  await untilUsable(page);
  page.off("response", collect);
  const bodies = await Promise.all(scripts.values());
  await page.context().close();
  const bytes = bodies.reduce((sum, body) => sum + gzipSync(body, { level: 9 }).length, 0);
  return { name: "load.gzip", value: bytes / 1000, unit: "kB", goal: 200, better: "lower" };
}
