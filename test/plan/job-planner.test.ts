import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { setPatch } from "../../src/figures/index.ts";
import { type Job, jobSchema } from "../../src/job/index.ts";
import { JobPlanner, patched, plan, type ShadePlan } from "../../src/plan/index.ts";
import { anyJob, anyMaking } from "../arbitrary-job.ts";
import { jobWith } from "../job-with.ts";

/** What a maker does to a job between two looks at its plan, drawn blind: it may have nothing to do it to. */
const anyEdit: fc.Arbitrary<(job: Job) => Job> = fc.oneof(
  {
    weight: 8,
    arbitrary: fc.tuple(fc.nat(), anyMaking).map(
      ([n, making]) =>
        (job: Job) =>
          setMaking(job, n, making),
    ),
  },
  fc.tuple(fc.nat(), fc.integer({ min: 300, max: 3000 })).map(
    ([n, mm]) =>
      (job: Job) =>
        atWindow(job, n, "opening/widthsMm/0", mm),
  ),
  fc.tuple(fc.nat(), fc.constantFrom("flat", "hobbled", "relaxed", "austrian")).map(
    ([n, style]) =>
      (job: Job) =>
        atWindow(job, n, "shade/style", style),
  ),
  fc
    .constantFrom("us", "au", "gb")
    .map((place) => (job: Job) => patched(job, setPatch(job, "/place", place))),
  fc
    .double({ min: 1, max: 90, noNaN: true })
    .map((hour) => (job: Job) => patched(job, setPatch(job, "/rates/labourPerHour", hour))),
  fc.nat().map((n) => (job: Job) => withoutWindow(job, n)),
  fc
    .boolean()
    .map(
      (inLine) => (job: Job) =>
        patched(job, inLine ? setPatch(job, "/rooms/0/inLine", {}) : removal(job, "/rooms/0/inLine")),
    ),
);

function removal(job: Job, path: "/rooms/0/inLine") {
  return job.rooms[0]?.inLine === undefined ? [] : [{ op: "remove" as const, path }];
}

function atWindow(job: Job, n: number, field: string, value: unknown): Job {
  const windows = job.rooms[0]?.windows.length ?? 0;
  return windows === 0 ? job : patched(job, setPatch(job, `/rooms/0/windows/${n % windows}/${field}`, value));
}

/** One group of settings, so that the others keep what they hold. */
function setMaking(job: Job, n: number, making: object): Job {
  const groups = Object.entries(making);
  const [group, values] = groups[n % Math.max(1, groups.length)] ?? ["fold", {}];
  return atWindow(job, n, `shade/making/${group}`, values);
}

function withoutWindow(job: Job, n: number): Job {
  const windows = job.rooms[0]?.windows.length ?? 0;
  return windows < 2 ? job : patched(job, [{ op: "remove", path: `/rooms/0/windows/${n % windows}` }]);
}

const read = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

describe("a planner that goes on with a job", () => {
  it("plans after any edits what would be planned from scratch", () => {
    fc.assert(
      fc.property(anyJob, fc.array(anyEdit, { minLength: 1, maxLength: 6 }), (first, edits) => {
        const planner = new JobPlanner();
        planner.plan(first);
        let job = first;
        for (const edit of edits) {
          const next = edit(job);
          // What the schema refuses no maker can enter.
          if (!jobSchema.safeParse(next).success) continue;
          job = next;
          expect(read(planner.plan(job))).toEqual(read(plan(job)));
        }
      }),
      { numRuns: 25 },
    );
  });

  it("leaves what its board bears and which way its folds break to whoever asks, on the first plan and after an edit", () => {
    const planner = new JobPlanner();
    const job = jobWith({});
    const isLate = (shade: ShadePlan | undefined) =>
      [
        [shade?.board, "strength"],
        [shade?.folds, "breaks"],
        [shade?.folds, "sag"],
      ].map(([of, key]) => Object.getOwnPropertyDescriptor(of ?? {}, `${key}`)?.get !== undefined);
    expect(isLate(planner.plan(job).shades[0])).toEqual([true, true, true]);
    expect(isLate(planner.plan(atWindow(job, 0, "opening/widthsMm/0", 1000)).shades[0])).toEqual([
      true,
      true,
      true,
    ]);
  });
});
