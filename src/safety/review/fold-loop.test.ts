import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { describe, expect, test } from "vitest";
import { jobWith } from "../../../test/job-with.ts";
import { type JobInput, jobSchema } from "../../job/index.ts";
import { plan } from "../../plan/index.ts";
import { inches } from "../../units/index.ts";

type Shade = NonNullable<JobInput["rooms"][number]["windows"][number]["shade"]>;
type Hobble = NonNullable<NonNullable<Shade["making"]>["hobble"]>;

function jobOf(lengthIn: number, hobble: Hobble, repeatIn?: number) {
  const print = { id: "print", name: "Print", usableWidthMm: 1370, massGsm: 180 };
  return jobWith(
    {
      opening: { widthsMm: [900], heightsMm: [inches(lengthIn)] },
      shade: {
        style: "hobbled",
        mount: "to-size",
        ...(repeatIn === undefined ? {} : { face: "print" }),
        making: { hobble },
      },
    },
    repeatIn === undefined ? {} : { cloths: [{ ...print, repeat: { verticalMm: inches(repeatIn) } }] },
  );
}

const loops = (job: ReturnType<typeof jobOf>) =>
  plan(job).shades[0]?.findings.filter(({ id }) => id === "safety.fold-loop") ?? [];

/** Workroom notes on hobbled shades: cloth + tape between two marks at most 16.9 in. */
describe("loop of a soft fold", () => {
  test.each([
    ["E9: repeat 17, tape 7, 18.33 in around", jobOf(49, { tapeMm: inches(7), repeats: 2, folds: 3 }, 17), 1],
    ["E10: tape 6, cloth 10.5, 16.5 in around", jobOf(48, {}), 0],
    ["X2 as folds of six, 19.29 in around", jobOf(45, { rule: "folds-of-six" }), 1],
    ["X2 to the letter, 9.64 in around", jobOf(45, { rule: "folds-of-three" }), 0],
    ["just at 16.9", jobOf(40, { tapeMm: inches(8), clothMm: inches(8.9) }), 0],
    ["just over", jobOf(40, { tapeMm: inches(8), clothMm: inches(8.91) }), 1],
  ])("%s", (_, job, count) => {
    expect(loops(job)).toHaveLength(count);
  });

  test.each([
    jobOf(49, { tapeMm: inches(7), repeats: 2, folds: 3 }, 17),
    jobOf(45, { rule: "folds-of-six" }),
    jobOf(45, { rule: "folds-of-six" }, 12),
    jobOf(60, { tapeMm: inches(9), clothMm: inches(15) }),
    jobOf(80, { tapeMm: inches(12), fullness: 3 }),
  ])("every way out that is offered is one (%#)", (job) => {
    const [found] = loops(job);
    expect(found?.remedies.length).toBeGreaterThan(0);
    for (const { patch } of found?.remedies ?? []) {
      const changed = jobSchema.parse(applyPatch(JSON.parse(JSON.stringify(job)), patch as never));
      expect(loops(changed)).toHaveLength(0);
    }
  });

  test("a shade as long as its tapes has no such loop, however far its rows are apart", () => {
    const job = jobWith({ shade: { style: "flat", making: { fold: { spacingMm: 400 } } } });
    expect(loops(job)).toHaveLength(0);
  });
});
