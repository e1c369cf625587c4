import fc from "fast-check";
import { type Job, MOUNTS, STYLES } from "../../src/job/index.ts";
import { MM_PER_INCH } from "../../src/units/index.ts";
import { jobWith } from "../job-with.ts";

/** What a maker measures in: the step of what is typed, if it has one, and the rulers. */
const MEASURES = {
  inches: { system: "imperial", stepMm: MM_PER_INCH / 8, rulers: ["1/16 in", "1/8 in"] },
  millimetres: { system: "metric", stepMm: 1, rulers: ["1 mm"] },
  "no step": { system: "metric", stepMm: undefined, rulers: ["1 mm"] },
} as const;

export type Measure = keyof typeof MEASURES;
export const EVERY_MEASURE = Object.keys(MEASURES) as Measure[];

/** Jobs as a workroom has them, most on printed cloth, in every style; sizes and repeats in whole steps of the ruler. */
export function printedJob(measure: Measure): fc.Arbitrary<Job> {
  const { system, stepMm, rulers } = MEASURES[measure];
  const size = (min: number, max: number): fc.Arbitrary<number> =>
    stepMm === undefined
      ? fc.double({ min, max, noNaN: true })
      : fc
          .integer({ min: Math.ceil(min / stepMm), max: Math.floor(max / stepMm) })
          .map((steps) => steps * stepMm);
  const window = fc.record({
    widthMm: size(450, 2600),
    heightMm: size(600, 2600),
    style: fc.constantFrom(...STYLES),
    mount: fc.constantFrom(...MOUNTS),
  });
  const repeat = fc.record(
    {
      verticalMm: size(80, 750),
      horizontalMm: size(80, 750),
      match: fc.constantFrom("straight" as const, "half-drop" as const),
      startXMm: size(0, 80),
    },
    { requiredKeys: ["verticalMm", "match"] },
  );
  return fc
    .record({
      windows: fc.array(window, { minLength: 1, maxLength: 4 }),
      usableWidthMm: size(1090, 1550),
      print: fc.option(repeat, { nil: undefined, freq: 5 }),
      shrink: fc.constantFrom({}, {}, { shrinkLength: 0.03, shrinkWidth: 0.015 }),
      ruler: fc.constantFrom(...rulers),
      seamMm: size(6, 20),
    })
    .map(({ windows, usableWidthMm, print, shrink, ruler, seamMm }) =>
      jobWith(
        {},
        {
          units: { system, ruler },
          cloths: [
            {
              ...{ id: "print", name: "Print", usableWidthMm, massGsm: 200, ...shrink },
              ...(print === undefined ? {} : { repeat: print }),
            },
          ],
          workshop: { hems: { seamMm } },
          rooms: [
            {
              id: "room",
              name: "Room",
              windows: windows.map(({ widthMm, heightMm, style, mount }, i) => ({
                id: `window-${i}`,
                name: `Window ${i + 1}`,
                opening: { widthsMm: [widthMm], heightsMm: [heightMm] },
                shade: { face: "print", lining: null, style, mount },
              })),
            },
          ],
        },
      ),
    );
}
