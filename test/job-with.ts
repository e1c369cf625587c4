import { type JobInput, jobSchema, partsOf, type ResolvedShade, resolveShade } from "../src/job/index.ts";

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

/** The resolved shade of the only window of such a job. */
export function resolvedWith(window: Partial<WindowInput>, job: Partial<JobInput> = {}): ResolvedShade {
  const made = jobWith(window, job);
  const room = made.rooms[0];
  const first = room?.windows[0];
  if (room === undefined || first === undefined) throw new Error("invalid test job: no window");
  return resolveShade(made, partsOf(made), room, first, "/rooms/0/windows/0");
}
