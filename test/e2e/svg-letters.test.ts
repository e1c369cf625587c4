import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { afterAll, beforeAll, expect, test } from "vitest";
import { drawSheet, place, toSvg } from "../../src/drawing/index.ts";
import { letterOutlines } from "../../src/letters/index.ts";
import { CASES } from "../gallery/windows.ts";
import { FONTS } from "../workbook/fonts.ts";
import { type Harness, startBrowser } from "./browser.ts";

let harness: Harness;
beforeAll(async () => {
  harness = await startBrowser();
});
afterAll(() => harness.close());

const files = createRequire(import.meta.url);
const face = (name: string, weight: number) =>
  `@font-face { font-family: "Source Sans 3"; font-weight: ${weight}; src: url(data:font/ttf;base64,${readFileSync(
    files.resolve(`@expo-google-fonts/source-sans-3/${name}/SourceSans3_${name}.ttf`),
  ).toString("base64")}) }`;
const FACES = face("400Regular", 400) + face("600SemiBold", 600);

async function pictured(svg: string, css = ""): Promise<Buffer> {
  // Finer than a screen: letters of a few pixels are fitted to its grid, lines are not.
  const { page } = await harness.open({ viewport: { width: 800, height: 1100 }, deviceScaleFactor: 3 });
  await page.setContent(`<style>${css} body { margin: 0 } svg { display: block }</style>${svg}`);
  await page.evaluate(() => document.fonts.ready.then(() => undefined));
  const picture = await page.screenshot();
  await page.context().close();
  return picture;
}

/** Share of pixels that differ by more than half the range, and of those that are no paper. */
async function compared(one: Buffer, other: Buffer): Promise<{ apart: number; inked: number }> {
  const { page } = await harness.open();
  return page.evaluate(
    async (pictures) => {
      const [a, b] = await Promise.all(
        pictures.map(async (text) => {
          const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
          const bitmap = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
          const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
          const context = canvas.getContext("2d");
          context?.drawImage(bitmap, 0, 0);
          return context?.getImageData(0, 0, bitmap.width, bitmap.height).data ?? new Uint8ClampedArray();
        }),
      );
      let apart = 0;
      let inked = 0;
      for (let i = 0; i < (a?.length ?? 0); i += 4) {
        if (Math.abs((a?.[i] ?? 0) - (b?.[i] ?? 0)) > 128) apart += 1;
        if ((a?.[i] ?? 255) < 200) inked += 1;
      }
      const pixels = (a?.length ?? 0) / 4;
      return { apart: apart / pixels, inked: inked / pixels };
    },
    [one.toString("base64"), other.toString("base64")],
  );
}

// Chromium sets the words with the very font file; the outlines must give the same picture without it.
test.each(["marking", "board", "cutting"] as const)(
  "%s looks the same without the typeface",
  async (kind) => {
    expect(execFileSync("fc-list", { encoding: "utf8" })).not.toMatch(/Source ?Sans/i);
    const { plan, shade } = CASES.outside();
    const placed = place(drawSheet(kind, plan, shade), { maxWidthMm: 180, maxHeightMm: 235 });
    const words = await pictured(toSvg(placed), FACES);
    const lines = await pictured(toSvg(placed, { letters: letterOutlines(FONTS) }));
    const { apart, inked } = await compared(words, lines);
    expect(inked).toBeGreaterThan(0.005);
    expect(apart).toBeLessThan(0.001);
    // The comparison notices words in another typeface.
    const other = await compared(words, await pictured(toSvg(placed)));
    expect(other.apart).toBeGreaterThan(4 * apart);
  },
);
