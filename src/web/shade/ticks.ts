import { editField } from "../state/fields.ts";
import { windowIndexOf } from "../state/planning.ts";
import { usePlanner } from "../state/store.ts";

/** Ticks a step off, or takes the tick back. Ticks are part of the job, so they persist and undo. */
export function tickStep(windowId: string, stepId: string, done: boolean): void {
  const { job } = usePlanner.getState();
  const place = job && windowIndexOf(job, windowId);
  if (!job || !place) return;
  const ticks = job.rooms[place.room]?.windows[place.window]?.ticks ?? [];
  const next = done ? [...ticks.filter((id) => id !== stepId), stepId] : ticks.filter((id) => id !== stepId);
  const pointer = `/rooms/${place.room}/windows/${place.window}/ticks`;
  editField(pointer, next.length === 0 ? undefined : next, done ? "Step done" : "Step not done");
}
