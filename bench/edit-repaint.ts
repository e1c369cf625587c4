import type { Page } from "playwright-core";
import type { Harness } from "../test/e2e/browser.ts";
import type { Figure } from "./figure.ts";
import { p95, repaintsOf } from "./repaints.ts";
import { untilUsable } from "./usable.ts";

const FIELD = "Width in the middle";

/** A keystroke in the width of a shade of the demonstration job, until all its drawings are painted anew. */
export async function editRepaint(harness: Harness): Promise<Figure> {
  const { page } = await harness.open({ viewport: { width: 1440, height: 900 } });
  await page.goto(harness.url);
  await untilUsable(page);
  await openFirstShade(page);
  const field = page.getByRole("textbox", { name: FIELD, exact: true });
  // One width after the other, each a little wider or narrower.
  const samples = await repaintsOf(page, (n) => field.fill(`35 ${1 + (n % 15)}/16`), { warm: 20, times: 80 });
  await page.context().close();
  return { name: "edit.repaint", value: p95(samples), unit: "ms", goal: 8, better: "lower" };
}

async function openFirstShade(page: Page): Promise<void> {
  await page.locator(".shelf-job-link").first().click();
  await page.locator(".elevation-window").first().click();
  await page.getByRole("textbox", { name: FIELD, exact: true }).waitFor();
}
