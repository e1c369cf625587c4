import type { Harness } from "../test/e2e/browser.ts";
import { type Figure, median } from "./figure.ts";
import { untilUsable } from "./usable.ts";

const VISITS = 5;

/** From the start of a first visit, nothing stored, until the first screen answers. */
export async function loadUsable(harness: Harness): Promise<Figure> {
  const visits: number[] = [];
  for (let n = 0; n < VISITS; n++) {
    const { page } = await harness.open();
    await page.goto(harness.url);
    visits.push(await untilUsable(page));
    await page.context().close();
  }
  return { name: "load.usable", value: median(visits) / 1000, unit: "s", goal: 1, better: "lower" };
}
