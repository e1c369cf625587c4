import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Harness, startBrowser } from "./browser.ts";
import { firstVisit, openShade } from "./planner.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

/** As a display shows a paint: red, green and blue from 0 to 255. */
function shown(page: Page, paint: string, cloth?: string): Promise<[number, number, number]> {
  return page.locator(".stage-panel").evaluate(
    (panel, { paint, cloth }) => {
      const spot = panel.appendChild(document.createElement("div"));
      spot.className = cloth === undefined ? "" : "in-its-cloth";
      if (cloth !== undefined) spot.style.setProperty("--cloth", cloth);
      spot.style.background = `var(--sw-${paint})`;
      const canvas = new OffscreenCanvas(1, 1).getContext("2d");
      if (canvas === null) throw new Error("no canvas");
      canvas.fillStyle = getComputedStyle(spot).backgroundColor;
      canvas.fillRect(0, 0, 1, 1);
      spot.remove();
      const [red = 0, green = 0, blue = 0] = canvas.getImageData(0, 0, 1, 1).data;
      return [red, green, blue];
    },
    { paint, ...(cloth === undefined ? {} : { cloth }) },
  );
}

/** Relative luminance and contrast ratio as WCAG 2.2 defines them. */
function luminance(rgb: readonly number[]): number {
  const [red = 0, green = 0, blue = 0] = rgb.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: readonly number[], other: readonly number[]): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

const DYES = [
  "#000000",
  "#ffffff",
  "#ff0000",
  "#00ff00",
  "#0000ff",
  "#ffff00",
  "#00ffff",
  "#ff00ff",
  "#808080",
];

test.each(["light", "dark"] as const)(
  "on cloth of any colour the words of a drawing are read, %s (WCAG 2.2, 1.4.3)",
  async (colorScheme) => {
    const { page, errors } = await firstVisit(harness, { colorScheme });
    await openShade(page, harness.url);
    for (const dye of DYES) {
      const cloth = await shown(page, "face", dye);
      for (const pen of ["ink", "pencil", "accent"]) {
        const ratio = contrast(cloth, await shown(page, pen));
        expect(ratio, `${pen} on ${dye} as ${cloth.join(" ")}`).toBeGreaterThanOrEqual(4.5);
      }
    }
    expect(errors).toEqual([]);
  },
);

test("a shade of blue cloth is drawn in blue, in the light as in the dark", async () => {
  for (const colorScheme of ["light", "dark"] as const) {
    const { page } = await firstVisit(harness, { colorScheme });
    await openShade(page, harness.url);
    // The cloth of the window is printed on navy in the demonstration.
    const fill = await page
      .locator('.sheet-svg path[fill^="var(--sw-face"]')
      .first()
      .evaluate((path) => {
        const canvas = new OffscreenCanvas(1, 1).getContext("2d");
        if (canvas === null) throw new Error("no canvas");
        canvas.fillStyle = getComputedStyle(path).fill;
        canvas.fillRect(0, 0, 1, 1);
        return [...canvas.getImageData(0, 0, 1, 1).data];
      });
    const [red = 0, , blue = 0] = fill;
    expect(blue, fill.join(" ")).toBeGreaterThan(red + 5);
  }
});

test("on the page of a job each room is drawn in its cloth before its pictures come", async () => {
  const { page } = await firstVisit(harness);
  await page.goto(`${harness.url}#/job/lantern-row`);
  await page.locator(".elevation-window").first().waitFor();
  const cloths = await page
    .locator(".elevation-plate")
    .evaluateAll((plates) => plates.map((plate) => getComputedStyle(plate).getPropertyValue("--cloth")));
  // Parlour, kitchen, back bedroom, landing and studio, as `examples/lantern-row.json` has their cloths.
  expect(cloths).toEqual(["#4a6378", "#b3473f", "#8a7f74", "#dfe9ea", "#5d7a4c"]);
});
