import { JobStates } from "./jobs/job-states.ts";
import { NewsDesk } from "./news/news-desk.ts";
import type { PaperQueue } from "./queue/paper-queue.ts";
import type { StoreDoor } from "./store/store-door.ts";

/** What the requests of one process share. */
export interface Workroom {
  door: StoreDoor;
  states: JobStates;
  news: NewsDesk;
  /** Wanted of the first owner where others can reach this server; where it is absent, only this machine can. */
  setUpCode?: string;
  /** Where papers wait; without one they wait for a server that has it. */
  queue?: PaperQueue;
  /** Exponent of what a password costs to check, for tests that have no time. */
  passwordCost?: number;
}

export type WorkroomOptions = Pick<Workroom, "setUpCode" | "passwordCost" | "queue">;

export function makeRoom(door: StoreDoor, options: WorkroomOptions = {}): Workroom {
  return { door, states: new JobStates(), news: new NewsDesk(door), ...options };
}
