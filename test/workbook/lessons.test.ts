import { evaluate } from "mathjs";
import { expect, test } from "vitest";
import { jobLessons, LESSONS, type TypedShade, typedJob, USUAL_SHADE } from "../../src/answers/index.ts";
import { sumInFigures } from "../../src/figures/index.ts";
import { LIFT_KINDS, STYLES } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { inches, MM_PER_INCH, type UnitChoice } from "../../src/units/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages } from "./read-pdf.ts";

const INCHES: UnitChoice = { system: "imperial", ruler: "1/8 in" };
const METRIC: UnitChoice = { system: "metric", ruler: "1 mm" };

function jobOf(typed: Partial<TypedShade>, units: UnitChoice) {
  const made = typedJob({ ...USUAL_SHADE, ...typed }, units);
  if (!made.ok) throw new Error("invalid numbers");
  return made.job;
}

async function pagesOf(job: ReturnType<typeof jobOf>, paper: "letter" | "a4") {
  const pdf = await makeWorkbook({
    plan: plan(job),
    lessonsOf: jobLessons(job),
    sets: ["lesson"],
    paper,
    fonts: FONTS,
  });
  return readPages(await openPdf(pdf));
}

test.each([
  ["letter", INCHES, { repeatMm: inches(13.5) }],
  ["a4", METRIC, { widthMm: 2400, lengthMm: 2600, repeatMm: 640, match: "half-drop" }],
  ["letter", METRIC, { widthMm: 400, lengthMm: 500 }],
] as const)(
  "every lesson is one page on %s, with its letters and its source",
  async (paper, units, typed) => {
    const pages = await pagesOf(jobOf(typed, units), paper);
    expect(pages).toHaveLength(LESSONS.length);
    for (const { text } of pages) {
      expect(text).toMatch(/Source: /);
      expect(text).not.toMatch(/NaN|undefined|C_l/);
    }
    expect(pages[3]?.text).toMatch(/Where the lock sits.*Last eye, over the last column/s);
  },
);

test("a lesson about cords says what cords do to children", async () => {
  const pages = await pagesOf(jobOf({}, INCHES), "letter");
  const warned = pages.filter(({ text }) => /strangle small children/.test(text)).length;
  expect(warned).toBe(LESSONS.length - 1);
});

test("every letter that words name stands in the drawing too", async () => {
  for (const { runs, text } of await pagesOf(jobOf({}, INCHES), "letter")) {
    const letters = runs.map((run) => run.text.trim()).filter((word) => /^[A-F]$/.test(word));
    for (const letter of new Set(letters))
      expect(letters.filter((one) => one === letter).length, `${letter}: ${text.slice(0, 60)}`).toBe(2);
  }
});

test("each style and each lift gives its lessons a page each", async () => {
  const cases = [...STYLES.map((style) => ({ style })), ...LIFT_KINDS.map((kind) => ({ kind }))];
  for (const { style, kind } of cases as {
    style?: (typeof STYLES)[number];
    kind?: (typeof LIFT_KINDS)[number];
  }[]) {
    const job = jobOf({}, INCHES);
    const shade = job.rooms[0]?.windows[0]?.shade;
    if (shade === undefined) throw new Error("no shade");
    if (style !== undefined) shade.style = style;
    if (kind !== undefined && shade.making?.lift) shade.making.lift.kind = kind;
    const [planned] = plan(job).shades;
    if (planned === undefined) throw new Error("no shade");
    const lessons = jobLessons(job)(planned);
    expect(
      lessons.map(({ id }) => id),
      style ?? kind,
    ).toEqual([...LESSONS]);
    const pages = await pagesOf(job, "letter");
    expect(pages, style ?? kind).toHaveLength(LESSONS.length);
    for (const { runs, text } of pages) {
      const sizes = runs.filter((run) => /\w/.test(run.text)).map(({ sizePt }) => sizePt);
      // In a drawing that is smaller than its measures they are set smaller and smaller.
      expect(Math.min(...sizes), `${style ?? kind}: ${text.slice(0, 60)}`).toBeGreaterThanOrEqual(6);
      // What is marked on the flat cloth is a drawing of its own, beside which the shade would be a speck.
      expect(text).not.toMatch(/laid flat, before|Marks for the tapes|Lines for the ribs|Fold lines of/);
    }
  }
});

test.each([INCHES, METRIC])("what is printed as a sum comes to its figure: %o", (units) => {
  const job = jobOf({ repeatMm: inches(13.5) }, units);
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("no shade");
  let sums = 0;
  for (const lesson of jobLessons(job)(shade)) {
    for (const { label, working } of lesson.figures) {
      const sum = working && sumInFigures(working, units);
      if (working === undefined || sum === undefined) continue;
      sums += 1;
      const found = evaluate(sum.replaceAll("−", "-").replaceAll("·", "*")) as number;
      const scale = working.unit === "mm" && units.system === "imperial" ? MM_PER_INCH : 1;
      // Each figure is told to a thousandth of an inch or a tenth of a millimetre.
      expect(Math.abs(found - working.value / scale), `${label}: ${sum}`).toBeLessThan(
        scale === 1 ? 0.6 : 0.02,
      );
    }
  }
  expect(sums).toBeGreaterThan(8);
});

test("without their job there are none", async () => {
  const pdf = await makeWorkbook({
    plan: plan(jobOf({}, INCHES)),
    sets: ["lesson", "tag"],
    paper: "letter",
    fonts: FONTS,
  });
  const pages = await readPages(await openPdf(pdf));
  expect(pages.some(({ text }) => /Threading the lock/.test(text))).toBe(false);
});
