import { readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import { emptyFolder, typed } from "../cli/typed.ts";
import { type Harness, startBrowser } from "./browser.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const NAME = `</title></text><script>globalThis.ran=1</script><image href="x" onerror="globalThis.ran=1"/>&lol;]]>`;

function hostileJob(): string {
  const windows = [
    { id: "w", name: NAME, opening: { widthsMm: [900], heightsMm: [1400] }, shade: { face: "cloth" } },
  ];
  return JSON.stringify({
    format: "shadewright-job",
    version: 1,
    id: "job",
    name: NAME,
    rooms: [{ id: "room", name: NAME, windows }],
    cloths: [{ id: "cloth", name: NAME, usableWidthMm: 700, massGsm: 200 }],
  });
}

// Chromium is the judge: it parses each file as strictly as SVG asks, and would run what can be run.
test("names in SVG files are text to a browser", async () => {
  const folder = emptyFolder();
  expect((await typed(["plan", "-", "--out", folder], hostileJob())).code).toBe(0);
  const drawings = join(folder, "drawings/w");
  const files = readdirSync(drawings).filter((name) => name.endsWith(".svg"));
  expect(files.length).toBeGreaterThan(7);
  const { page, errors } = await harness.open();
  for (const file of files) {
    await page.goto(pathToFileURL(join(drawings, file)).href);
    const seen = await page.evaluate(() => ({
      root: document.documentElement.nodeName,
      broken: document.querySelectorAll("parsererror").length,
      active: document.querySelectorAll("script, image, foreignObject, a").length,
      ran: "ran" in globalThis,
    }));
    expect({ file, ...seen }).toEqual({ file, root: "svg", broken: 0, active: 0, ran: false });
  }
  expect(errors).toEqual([]);
});
