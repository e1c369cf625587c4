import fc from "fast-check";
import { type InLine, type Job, type JobInput, jobSchema, LINE_FOLDS } from "../src/job/index.ts";
import { RULERS } from "../src/units/index.ts";
import { CORD_LOCK } from "./job-with.ts";

type WindowInput = JobInput["rooms"][number]["windows"][number];

/** A valid metric job of one room; what is not said is the default. */
export function roomOf(
  windows: WindowInput[],
  inLine: InLine | undefined,
  rest: Partial<JobInput> = {},
): Job {
  return jobSchema.parse({
    format: "shadewright-job",
    version: 1,
    id: "room-job",
    name: "Room job",
    units: { system: "metric", ruler: "1 mm" },
    rooms: [{ id: "room", name: "Kitchen", windows, ...(inLine === undefined ? {} : { inLine }) }],
    workshop: CORD_LOCK,
    ...rest,
  });
}

const mm = (min: number, max: number) => fc.integer({ min, max });
/** Whatever a room in line may be asked for. */
export const anyInLine: fc.Arbitrary<InLine> = fc.oneof(
  fc.constant({}),
  fc.record(
    {
      folds: fc.constantFrom("levels" as const, "levels" as const, ...LINE_FOLDS),
      spacingMm: fc.oneof(mm(100, 200), fc.double({ min: 20, max: 20_000, noNaN: true })),
      stack: fc.boolean(),
      motif: fc.boolean(),
      mostLowerMm: mm(0, 400),
      without: fc.subarray(["window-2", "nobody"]),
    },
    { requiredKeys: [] },
  ),
);

/** Two to six windows as rooms have them, each with or without a wish. */
export const likelyRoom: fc.Arbitrary<Job> = fc
  .record({
    ruler: fc.constantFrom(...RULERS),
    inLine: anyInLine,
    windows: fc.array(
      fc.record({
        sillMm: fc.oneof(
          mm(0, 1100),
          fc.constantFrom(0, 900, 914.4),
          fc.double({ min: 0, max: 1100, noNaN: true }),
        ),
        lengthMm: fc.oneof(mm(500, 2300), fc.constantFrom(1200, 1219.2)),
        measured: fc.constantFrom(true, true, true, true, false),
        mount: fc.constantFrom("inside" as const, "outside" as const, "to-size" as const),
        style: fc.constantFrom("flat" as const, "flat" as const, "flat" as const, "ribbed" as const),
        fold: fc.oneof(
          { weight: 5, arbitrary: fc.constant({}) },
          fc.record(
            {
              rule: fc.constantFrom("half-fold" as const, "no-headrail" as const, "even-fold" as const),
              rows: mm(2, 12),
              skirtMm: mm(0, 80),
              headrailMm: mm(40, 160),
              largestSpacingMm: mm(120, 260),
              stackMm: mm(150, 400),
              gradeStepMm: mm(0, 4),
            },
            { requiredKeys: [] },
          ),
        ),
      }),
      { minLength: 2, maxLength: 6 },
    ),
  })
  .map(({ ruler, inLine, windows }) =>
    roomOf(
      windows.map(({ sillMm, lengthMm, measured, mount, style, fold }, i) => ({
        id: `window-${i}`,
        name: `Window ${i}`,
        opening: {
          widthsMm: [900],
          heightsMm: [lengthMm],
          ...(measured ? { sillAboveFloorMm: sillMm } : {}),
        },
        shade: { mount, style, making: { fold } },
      })),
      inLine,
      { units: { system: ruler === "1 mm" ? "metric" : "imperial", ruler } },
    ),
  );

/** The same job with its rooms in line. */
export function withInLine([job, inLine]: [Job, InLine]): Job {
  return { ...job, rooms: job.rooms.map((room) => ({ ...room, inLine })) };
}
