import { readFileSync } from "node:fs";
import { type Job, newJob, newWindow, openJobText } from "../src/job/index.ts";

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

/** Windows of one room of a contract. */
const IN_A_ROOM = 25;

/**
 * A contract of so many windows: those of the demonstration job in turn, five styles in six cloths, no two of one size and
 * 25 to a room. Run from the top of the project.
 */
export function contractOf(count: number): Job {
  const opened = openJobText(readFileSync("examples/lantern-row.json", "utf8"));
  if (!opened.ok) throw new Error("the demonstration job does not open");
  const all = opened.job.rooms.flatMap(({ windows }) => windows);
  const windows = Array.from({ length: count }, (_, n) => {
    const drawn = structuredClone(all[n % all.length] as (typeof all)[number]);
    const { diagonalsMm: _diagonals, ...opening } = drawn.opening;
    const widerMm = ((n * 37) % 601) - 300;
    const longerMm = ((n * 53) % 701) - 350;
    opening.widthsMm = opening.widthsMm.map((mm) => mm + widerMm);
    opening.heightsMm = opening.heightsMm.map((mm) => mm + longerMm);
    return { ...drawn, id: `window-${n}`, name: `Window ${n}`, opening };
  });
  const rooms = Array.from({ length: Math.ceil(count / IN_A_ROOM) }, (_, r) => ({
    id: `room-${r}`,
    name: `Room ${r}`,
    windows: windows.slice(IN_A_ROOM * r, IN_A_ROOM * (r + 1)),
  }));
  return { ...opened.job, rooms };
}
