import type { Job, Room } from "../../job/index.ts";
import { type AlignedRoom, type Plan, plan, planRoom, planWindow, type ShadePlan } from "../../plan/index.ts";

/** Where a window stands in the job. */
export type WindowIndex = { room: number; window: number };

/** The indices of a window; undefined where the job has no such window. */
export function windowIndexOf(job: Job, windowId: string): WindowIndex | undefined {
  for (const [room, { windows }] of job.rooms.entries()) {
    const window = windows.findIndex((one) => one.id === windowId);
    if (window >= 0) return { room, window };
  }
  return undefined;
}

interface KnownLine {
  context: unknown[];
  line: AlignedRoom | undefined;
}

const lines = new WeakMap<Room, KnownLine>();

/** What the windows of a room share, where they are to be in line; aligned again only when something has changed. */
export function lineOf(job: Job, roomIndex: number): AlignedRoom | undefined {
  const room = job.rooms[roomIndex];
  if (room?.inLine === undefined) return undefined;
  const { cloths, hardware, workshop, units, place, purpose } = job;
  const context = [cloths, hardware, workshop, units, place, purpose, roomIndex];
  const known = lines.get(room);
  if (known?.context.every((value, i) => value === context[i])) return known.line;
  const line = planRoom(job, roomIndex);
  lines.set(room, { context, line });
  return line;
}

interface Known {
  context: unknown[];
  shade: ShadePlan;
}

const shades = new WeakMap<object, Known>();

/** One shade's plan; planned again only when something that it hangs on has changed. */
export function shadePlanOf(job: Job, { room, window }: WindowIndex): ShadePlan | undefined {
  const it = job.rooms[room]?.windows[window];
  if (!it) return undefined;
  const { cloths, hardware, stock, workshop, rates, units, place, purpose, rooms } = job;
  const name = rooms[room]?.name;
  const line = lineOf(job, room);
  // A neighbour's edit changes what the room tells this shade, or it does not.
  const fromRoom = line === undefined ? undefined : JSON.stringify(line.shades.get(it.id));
  const context = [
    cloths,
    hardware,
    stock,
    workshop,
    rates,
    units,
    place,
    purpose,
    name,
    room,
    window,
    fromRoom,
  ];
  const known = shades.get(it);
  if (known?.context.every((value, i) => value === context[i])) return known.shade;
  const shade = planWindow(job, room, window, line);
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
