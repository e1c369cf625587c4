import type { Page } from "playwright-core";
import type { Job } from "../src/job/index.ts";
import type { Harness } from "../test/e2e/browser.ts";
import { untilUsable } from "./usable.ts";

/** A page with a job on its shelf, as a file brings it; the job itself is not open. */
export async function pageWithJob(harness: Harness, job: Job): Promise<Page> {
  const { page } = await harness.open({ viewport: { width: 1440, height: 900 } });
  await page.goto(harness.url);
  await untilUsable(page);
  await page.locator('input[type="file"]').setInputFiles({
    name: "job.json",
    mimeType: "application/json",
    buffer: Buffer.from(JSON.stringify(job)),
  });
  await page.locator(".elevation-window").first().waitFor({ timeout: 120_000 });
  await page.goto(`${harness.url}#/`);
  await page.locator(`.shelf-job-link[href$="${job.id}"]`).waitFor();
  return page;
}
