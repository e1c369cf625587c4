import type { Job } from "../job/index.ts";
import { badInput } from "./bad-input.ts";
import { nearest } from "./nearest.ts";

/** Where the window stands in the job whose id was typed after `--shade`. Throws `BadInput` where there is none. */
export function findWindow(job: Job, shadeId: string): [room: number, window: number] {
  for (const [room, { windows }] of job.rooms.entries()) {
    const window = windows.findIndex(({ id }) => id === shadeId);
    if (window >= 0) return [room, window];
  }
  const ids = job.rooms.flatMap((room) => room.windows.map(({ id }) => id));
  const close = nearest(shadeId, ids);
  const list = ids.slice(0, 12).join(", ");
  const wanted =
    ids.length === 0 ? "a job that has windows" : `the id of a window of this job: ${close ?? list}`;
  throw badInput("--shade", JSON.stringify(shadeId), wanted);
}
