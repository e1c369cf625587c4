import { type English, type Job, spellerOf } from "../job/index.ts";
import { badInput } from "./bad-input.ts";
import { findWindow } from "./find-window.ts";
import { speltTexts } from "./spelt.ts";

/** An answer for machines. */
export function answerText(format: string, body: object, english?: English): string {
  const spelt = english === undefined ? undefined : speltTexts(spellerOf(english));
  return `${JSON.stringify({ format, version: 2, ...body }, spelt, 2)}\n`;
}

/** Where the shade stands in the job; the first unless it is named. */
export function placeOf(job: Job, shadeId: string | undefined): [room: number, window: number] {
  if (shadeId !== undefined) return findWindow(job, shadeId);
  const room = job.rooms.findIndex(({ windows }) => windows.length > 0);
  if (room < 0) throw badInput("(file)", "a job without windows", "a job with at least one");
  return [room, 0];
}
