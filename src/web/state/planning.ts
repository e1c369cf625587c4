import type { Job, Window } from "../../job/index.ts";
import { type AlignedRoom, JobPlanner, type Plan, RemedyTrial, type ShadePlan } from "../../plan/index.ts";

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

export function windowOf(job: Job, windowId: string): Window | undefined {
  const at = windowIndexOf(job, windowId);
  return at && job.rooms[at.room]?.windows[at.window];
}

/** One planner for each of the jobs looked at last: it runs again only what is behind a change. */
const planners = new Map<string, JobPlanner>();
const MOST_PLANNERS = 6;

function plannerOf({ id }: Job): JobPlanner {
  const planner = planners.get(id) ?? new JobPlanner();
  // The one looked at last goes to the end, so that the first is the one to forget.
  planners.delete(id);
  planners.set(id, planner);
  for (const [oldest] of planners) {
    if (planners.size <= MOST_PLANNERS) break;
    planners.delete(oldest);
  }
  return planner;
}

/** What the windows of a room share, where they are to be in line. */
export function alignedRoomOf(job: Job, roomIndex: number): AlignedRoom | undefined {
  return job.rooms[roomIndex]?.inLine === undefined ? undefined : plannerOf(job).room(job, roomIndex);
}

/** One shade's plan. */
export function shadePlanOf(job: Job, { room, window }: WindowIndex): ShadePlan | undefined {
  return plannerOf(job).shade(job, room, window);
}

const plans = new WeakMap<Job, Plan>();

/** The whole job's plan, the same one for each state of the job. */
export function planOf(job: Job): Plan {
  const known = plans.get(job);
  if (known) return known;
  const planned = plannerOf(job).plan(job);
  plans.set(job, planned);
  return planned;
}

const trials = new WeakMap<Job, RemedyTrial>();

/** Where remedies of one state of the job are tried; what was planned for it already is not planned again. */
export function trialOf(job: Job): RemedyTrial {
  const known = trials.get(job);
  if (known) return known;
  const trial = new RemedyTrial(job, (room, window) => shadePlanOf(job, { room, window }));
  trials.set(job, trial);
  return trial;
}
