import type { Page } from "playwright-core";
import { WIDTH } from "./planner.ts";

/**
 * Types a width that grows by one millimetre every 30 ms, until the page ends. Gives the widths that the planner called
 * saved: each is heard of at once, so that the list outlives the page.
 */
export async function keepTyping(page: Page): Promise<readonly number[]> {
  const acknowledged: number[] = [];
  await page.exposeFunction("acknowledge", (mm: number) => acknowledged.push(mm));
  await page.evaluate((name) => {
    const input = [...document.querySelectorAll("label")].find(
      (label) => label.textContent === name,
    )?.control;
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, "value")?.set;
    const state = document.querySelector('[data-testid="save-state"]');
    let mm = 1000;
    new MutationObserver(() => {
      if (state?.getAttribute("data-state") === "saved")
        (globalThis as unknown as { acknowledge(mm: number): void }).acknowledge(mm);
    }).observe(state as Node, { attributes: true });
    setInterval(() => {
      set?.call(input, `${++mm} mm`);
      input?.dispatchEvent(new InputEvent("input", { bubbles: true }));
    }, 30);
  }, WIDTH);
  return acknowledged;
}
