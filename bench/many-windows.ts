import { type Job, newJob, newWindow } from "../src/job/index.ts";

/** A job of so many windows, no two alike, as a workroom's list might be; the same each time. */
export function jobOf(count: number): Job {
  const windows = Array.from({ length: count }, (_, n) =>
    newWindow({
      id: `window-${n}`,
      name: `Window ${n}`,
      widthMm: 500 + ((n * 37) % 1500),
      heightMm: 700 + ((n * 53) % 1700),
      mount: n % 3 === 0 ? "outside" : "inside",
    }),
  );
  // Fractions of an inch take more work to write than millimetres.
  const job = newJob({ id: "bench", name: "Bench, demo", system: "imperial" });
  return { ...job, rooms: [{ id: "room", name: "Room", windows }] };
}
