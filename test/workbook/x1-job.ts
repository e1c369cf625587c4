import { type Job, jobSchema, newJob, newWindow } from "../../src/job/index.ts";
import { inches, type UnitSystem } from "../../src/units/index.ts";

/**
 * Run X1 of the trade notes (derived there by geometry, not by this program): 36 × 60 in, headrail 3 in,
 * rings at most 8 in apart, edge inset 2 in, columns at most 10 in apart, lock on the right, tail 30 in, knots 6 in.
 */
export function x1Job(system: UnitSystem = "imperial"): Job {
  const job = newJob({ id: "x1", name: "Ferry House", system, place: "gb", purpose: "own-home" });
  const window = newWindow({
    id: "landing",
    name: "Landing window",
    widthMm: inches(36),
    heightMm: inches(60),
    mount: "to-size",
  });
  return jobSchema.parse({
    ...job,
    rooms: [
      {
        id: "landing",
        name: "Upper landing",
        windows: [
          {
            ...window,
            shade: {
              ...window.shade,
              making: {
                fold: { headrailMm: inches(3), largestSpacingMm: inches(8) },
                columns: { edgeInsetMm: inches(2), largestSpacingMm: inches(10) },
                lift: { kind: "cord-lock", controlSide: "right", tailMm: inches(30), knotsMm: inches(6) },
              },
            },
          },
        ],
      },
    ],
  });
}

/** Rows from the hem up, and columns from the left edge, as the notes give them. */
export const X1_ROWS_IN = [3.8, 11.4, 19.0, 26.6, 34.2, 41.8, 49.4];
export const X1_COLUMNS_IN = [2, 10, 18, 26, 34];
