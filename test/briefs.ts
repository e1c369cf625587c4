import { type Brief, type JobInput, jobSchema, partsOf, settleShade } from "../src/job/index.ts";

type WindowInput = JobInput["rooms"][number]["windows"][number];

/** The lift that most tests are about; a job that says nothing gets the careful proposal. */
export const CORD_LOCK = { lift: { kind: "cord-lock" } } as const;

/** A valid job with one window and a cord lock, for tests: what is not said is the default. */
export function jobWith(window: Partial<WindowInput>, job: Partial<JobInput> = {}) {
  return jobSchema.parse({
    format: "shadewright-job",
    version: 1,
    id: "test-job",
    name: "Test job",
    rooms: [
      {
        id: "room-1",
        name: "Room",
        windows: [
          { id: "window-1", name: "Window", opening: { widthsMm: [900], heightsMm: [1500] }, ...window },
        ],
      },
    ],
    ...job,
    workshop: { ...CORD_LOCK, ...job.workshop, lift: { ...CORD_LOCK.lift, ...job.workshop?.lift } },
  });
}

/** The brief of the only window of such a job. */
export function briefWith(window: Partial<WindowInput>, job: Partial<JobInput> = {}): Brief {
  const settled = jobWith(window, job);
  const room = settled.rooms[0];
  const first = room?.windows[0];
  if (room === undefined || first === undefined) throw new Error("invalid test job: no window");
  return settleShade(settled, partsOf(settled), room, first, "/rooms/0/windows/0");
}
