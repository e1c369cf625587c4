import type { Page } from "playwright-core";

/** The planner marks the moment when its first screen answers. */
const USABLE = "shadewright:usable";

/** Milliseconds from the start of the navigation until the first screen answered. */
export async function untilUsable(page: Page): Promise<number> {
  const mark = await page.waitForFunction(
    (name) => performance.getEntriesByName(name, "mark")[0]?.startTime,
    USABLE,
    { timeout: 20_000 },
  );
  return Number(await mark.jsonValue());
}
