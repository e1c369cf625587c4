import type { Job } from "../../job/index.ts";
import { type Plan, plan, planWindow, type ShadePlan } from "../../plan/index.ts";

type Place = { room: number; window: number };

/** Where a window stands in the job. */
export function placeOf(job: Job, windowId: string): Place | undefined {
  for (const [room, { windows }] of job.rooms.entries()) {
    const window = windows.findIndex((one) => one.id === windowId);
    if (window >= 0) return { room, window };
  }
  return undefined;
}

interface Known {
  context: unknown[];
  shade: ShadePlan;
}

const shades = new WeakMap<object, Known>();

/** One shade's plan; planned again only when something that it hangs on has changed. */
export function shadePlanOf(job: Job, { room, window }: Place): ShadePlan | undefined {
  const it = job.rooms[room]?.windows[window];
  if (!it) return undefined;
  const { cloths, hardware, stock, workshop, rates, units, place, purpose, rooms } = job;
  const name = rooms[room]?.name;
  const context = [cloths, hardware, stock, workshop, rates, units, place, purpose, name, room, window];
  const known = shades.get(it);
  if (known?.context.every((value, i) => value === context[i])) return known.shade;
  const shade = planWindow(job, room, window);
  if (shade) shades.set(it, { context, shade });
  return shade;
}

const plans = new WeakMap<Job, Plan>();

/** The whole job's plan, once for each state of the job. */
export function planOf(job: Job): Plan {
  const known = plans.get(job);
  if (known) return known;
  const planned = plan(job);
  plans.set(job, planned);
  return planned;
}
