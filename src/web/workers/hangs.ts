import type { Job } from "../../job/index.ts";

/** A hundred times what the work takes: a worker that has said nothing for so long hangs. */
export const HANGS_MS = 30_000;
/** More where every window of a job is planned. */
const A_WINDOW_MS = 60;
/** More where every remedy is tried, or all cloth is laid, between two words. */
const A_WINDOW_TRIED_MS = 500;

export function windowCount(job: Job): number {
  return job.rooms.reduce((sum, room) => sum + room.windows.length, 0);
}

/** After so long a worker that plans this job hangs, ms. */
export function planningHangsMs(job: Job): number {
  return HANGS_MS + A_WINDOW_MS * windowCount(job);
}

/** After so long without a word a worker that sets this job's workbook, or cuts it, hangs, ms. */
export function makingHangsMs(job: Job): number {
  return 2 * HANGS_MS + A_WINDOW_TRIED_MS * windowCount(job);
}
