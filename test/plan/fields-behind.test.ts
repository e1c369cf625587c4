import fc from "fast-check";
import { describe, it } from "vitest";
import { type Figure, fieldsBehind, setPatch } from "../../src/figures/index.ts";
import { type Job, jobSchema, LIFT_KINDS, STYLES } from "../../src/job/index.ts";
import { GIVEN_SIZE } from "../../src/measure/index.ts";
import { figuresOf, patched, plan } from "../../src/plan/index.ts";
import { anyMaking } from "../arbitrary-job.ts";
import { jobWith } from "../job-with.ts";

/** A shade that can be made, whose maker chose little: what one more field changes then shows in many figures. */
const anyShade = fc
  .record({
    style: fc.constantFrom(...STYLES),
    kind: fc.constantFrom(...LIFT_KINDS),
    mount: fc.constantFrom("inside" as const, "outside" as const, "to-size" as const),
    widthMm: fc.integer({ min: 400, max: 2000 }),
    heightMm: fc.integer({ min: 600, max: 2400 }),
    sillMm: fc.option(fc.integer({ min: 0, max: 1200 }), { nil: undefined }),
  })
  .map(({ style, kind, mount, widthMm, heightMm, sillMm }) =>
    jobWith({
      opening: {
        widthsMm: [widthMm],
        heightsMm: [heightMm],
        ...(sillMm === undefined ? {} : { sillAboveFloorMm: sillMm }),
      },
      shade: { style, mount, making: { lift: { kind } } },
    }),
  );

/** One setting, or one measurement, and what it is set to. */
const anyField = fc.oneof(
  {
    weight: 12,
    arbitrary: anyMaking.chain((making) => {
      const set = Object.entries(making).flatMap(([group, values]) =>
        Object.entries(values as object).map(([name, value]) => ({ field: `${group}/${name}`, value })),
      );
      return set.length === 0 ? fc.constant(undefined) : fc.constantFrom(...set);
    }),
  },
  fc.constantFrom(
    { field: "opening/widthsMm", value: [777] },
    { field: "opening/heightsMm", value: [1333] },
    { field: "opening/sillAboveFloorMm", value: 555 },
  ),
);

function figuresIn(job: Job): ReadonlyMap<string, Figure> {
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("invalid test job: no shade");
  return figuresOf(shade);
}

function pointerOf(field: string): string {
  return `/rooms/0/windows/0/${field.startsWith("opening/") ? field : `shade/making/${field}`}`;
}

/** Figures that came out otherwise though they do not name the field. */
function silent(field: string, before: ReadonlyMap<string, Figure>, after: ReadonlyMap<string, Figure>) {
  return [...before].flatMap(([id, { value }]) => {
    const then = after.get(id);
    if (then === undefined || Math.abs(then.value - value) <= 1e-9 * Math.abs(value)) return [];
    const named = [before, after].some((figures) => fieldsBehind(figures, id, GIVEN_SIZE).includes(field));
    return named ? [] : [`${id} changes with ${field} and does not name it`];
  });
}

describe("fields behind a figure", () => {
  it("are all that change it", () => {
    fc.assert(
      fc.property(anyShade, fc.array(anyField, { minLength: 3, maxLength: 6 }), (job, fields) => {
        const before = figuresIn(job);
        for (const one of fields) {
          if (one === undefined) continue;
          const changed = patched(job, setPatch(job, pointerOf(one.field), one.value));
          if (!jobSchema.safeParse(changed).success) continue;
          const left = silent(one.field, before, figuresIn(changed));
          if (left.length > 0) throw new Error(left.join("\n"));
        }
      }),
      { numRuns: 60 },
    );
  });
});
