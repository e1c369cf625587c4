import { startBrowser } from "../test/e2e/browser.ts";
import { ensureWeb } from "./build-web.mjs";

/** `npm run picture` takes the picture of the planner that the README shows. */
const FILE = "docs/planner.png";

ensureWeb();
const harness = await startBrowser();
const { page } = await harness.open({ viewport: { width: 1440, height: 900 }, colorScheme: "light" });
await page.goto(harness.url);
await page.locator(".shelf-job-link").first().click();
await page.locator(".elevation-window").first().click();
await page.getByRole("textbox", { name: "Width in the middle", exact: true }).waitFor();
// The saved state and the fonts settle after the first paint.
await page.waitForLoadState("networkidle");
await page.evaluate(() => document.fonts.ready);
await page.waitForTimeout(500);
await page.screenshot({ path: FILE });
await harness.close();
