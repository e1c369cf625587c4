import type { Job } from "./job.ts";

/** Largest job document that is read, in characters: 2,000 shades take about 2 million. */
export const LARGEST_JOB_CHARS = 20_000_000;

/** A job as the text of its file: what `openJobText` reads back. */
export function jobText(job: Job): string {
  return `${JSON.stringify(job, null, 2)}\n`;
}
