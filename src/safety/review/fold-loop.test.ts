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

  /** Twelve inches of tape at three times as much cloth: 36 in of cloth, 48 in around. 16.9 in are 429 mm. */
  const WIDE = { units: { system: "metric", ruler: "1 mm" } } as const;
  const plain = (text = "") => text.replaceAll("\u00a0", " ");

  test("is told with its cloth, its tape and the way around, and with a tape marked closer", () => {
    const job = { ...jobOf(84, { tapeMm: inches(12), fullness: 3 }), ...WIDE };
    const [found] = loops(job);
    expect(found).toMatchObject({
      severity: "fix",
      stage: "safety",
      path: "/rooms/0/windows/0/shade/making/hobble",
      cite: { source: "hobbled-workroom" },
      figures: ["safety.fold-loop"],
    });
    expect(plain(found?.text)).toBe(
      "Each soft fold makes a loop of its own: 914 mm of cloth and 305 mm of tape, 1219 mm around. A workroom keeps cloth and tape together to 429 mm, since a child’s head goes through a larger one. No rule that was read here says so.",
    );
    // 429.26 / (1 + 3), down to a whole millimetre.
    expect(found?.remedies.map(({ label, changes }) => [plain(label), changes])).toEqual([
      ["Mark the tape at most 107 mm apart", undefined],
    ]);
    expect(found?.remedies[0]?.patch).toMatchObject([{ value: "tape" }, { value: 107 }]);
  });

  test("folds of six are read to the letter where half of each keeps to the loop, and a pattern falls as it comes", () => {
    const labels = (job: ReturnType<typeof jobOf>) =>
      loops({ ...job, ...WIDE })[0]?.remedies.map(({ label, changes }) => [plain(label), changes]) ?? [];
    const letter = "Read the published rule to the letter: folds of half the size";
    // 429.26 mm over 1 + 1.75, the usual fullness.
    const plainCloth = labels(jobOf(45, { rule: "folds-of-six" }));
    expect(plainCloth.map(([label]) => label)).toEqual([letter, "Mark the tape at most 156 mm apart"]);
    const falls = "The pattern then falls on the folds as it comes.";
    for (const [, changes] of plainCloth) expect(changes).toBeUndefined();
    for (const [, changes] of labels(jobOf(45, { rule: "folds-of-six" }, 12))) expect(changes).toBe(falls);
  });

  test("a shade as long as its tapes has no such loop, however far its rows are apart", () => {
    const job = jobWith({ shade: { style: "flat", making: { fold: { spacingMm: 400 } } } });
    expect(loops(job)).toHaveLength(0);
  });
});
