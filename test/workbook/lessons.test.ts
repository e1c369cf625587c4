import { evaluate } from "mathjs";
import { expect, test } from "vitest";
import { jobLessons, LESSONS, type TypedShade, typedJob, USUAL_SHADE } from "../../src/answers/index.ts";
import { sumInFigures } from "../../src/figures/index.ts";
import { LIFT_KINDS, STYLE_TRAITS, STYLES } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { inches, MM_PER_INCH, type UnitChoice } from "../../src/units/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { expectNear } from "../near.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages, readStrokes } from "./read-pdf.ts";

const INCHES: UnitChoice = { system: "imperial", ruler: "1/8 in" };
const METRIC: UnitChoice = { system: "metric", ruler: "1 mm" };

function jobOf(typed: Partial<TypedShade>, units: UnitChoice) {
  const made = typedJob({ ...USUAL_SHADE, ...typed }, units);
  if (!made.ok) throw new Error("invalid numbers");
  return made.job;
}

function bookOf(job: ReturnType<typeof jobOf>, paper: "letter" | "a4") {
  return makeWorkbook({
    plan: plan(job),
    lessonsOf: jobLessons(job),
    sets: ["lesson"],
    paper,
    fonts: FONTS,
  });
}

async function pagesOf(job: ReturnType<typeof jobOf>, paper: "letter" | "a4") {
  return readPages(await openPdf(await bookOf(job, paper)));
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

/** Our own minimum: with what the letters are under the drawing it was 15.6 mm long on US Letter. */
const LEAST_LOCK_MM = 21.5;

test.each(["letter", "a4"] as const)(
  "on %s the lock of its lessons is large enough to be pointed at",
  async (paper) => {
    const job = jobOf({}, METRIC);
    const [shade] = plan(job).shades;
    if (shade?.lift.kind !== "cord-lock") throw new Error("no lock");
    const { housingLengthMm, housingWidthMm } = shade.lift;
    const pdf = await openPdf(await bookOf(job, paper));
    const pages = await readPages(pdf);
    for (const title of ["Which lock, and why", "Threading the lock"]) {
      const at = pages.findIndex(({ text }) => text.includes(title));
      const housings = (await readStrokes(await pdf.getPage(at + 1))).filter(
        ({ width, height }) =>
          height > 1 && Math.abs(width / height - housingLengthMm / housingWidthMm) < 1e-3,
      );
      expect(Math.max(...housings.map(({ width }) => (width * 25.4) / 72)), title).toBeGreaterThan(
        LEAST_LOCK_MM,
      );
    }
  },
);

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

/** Each style where its lift and its style allow it, and one whose rows were measured as they are. */
const SHADES = [
  ...STYLES.map((style) => [style, jobWith({ shade: { style, mount: "outside" } })] as const),
  ["in six rows", jobWith({ shade: { style: "flat", making: { fold: { rows: 6 } } } })],
  [
    "measured",
    jobWith({
      opening: { widthsMm: [900], heightsMm: [1200] },
      shade: {
        mount: "to-size",
        existing: { tasks: ["restring"], rowsFromHemMm: [90, 280, 520], columnsFromLeftMm: [50, 450, 850] },
      },
    }),
  ],
] as const;

// The sums that the words tell, done again from the places of the rows.
test.each(SHADES)("what a lesson says of rows holds for this shade: %s", (_, job) => {
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("no shade");
  const lesson = jobLessons(job)(shade).find(({ id }) => id === "rows-and-folds");
  if (lesson === undefined) throw new Error("no lesson");
  const { grid, size } = shade;
  const words = [...lesson.views.flatMap(({ points }) => points.map(({ text }) => text)), lesson.reason].join(
    " ",
  );
  const [spacing = 0] = grid.spacingsMm;
  if (/Then every/.test(words)) for (const mm of grid.spacingsMm) expectNear(mm, spacing, 0.05);
  else expect(new Set(grid.spacingsMm.map(Math.round)).size).not.toBe(1);
  if (/headrail and one spacing/.test(words)) expectNear(grid.topSectionMm, grid.headrailMm + spacing, 0.05);
  if (/half fold/.test(words)) {
    // Length less headrail and what hangs below the lowest fold, in halves of a spacing.
    const below = grid.bottomSectionMm - spacing / 2;
    const halves = (size.finishedLengthMm - grid.headrailMm - below) / (spacing / 2);
    expectNear(halves, 2 * grid.rows.length + 1, 1e-6);
  } else {
    const folds = [2 * (grid.bottomSectionMm - grid.skirtMm), ...grid.spacingsMm];
    const isOneFold = Math.max(...folds) - Math.min(...folds) < 0.05;
    const isParted = STYLE_TRAITS[shade.style].partsIntoHalfFolds && shade.existing === undefined;
    expect(isOneFold && isParted).toBe(false);
  }
});

test("a lesson about a lock says so where the shade has none; a hem without a bar has none in its words", () => {
  const job = jobWith({ shade: { style: "relaxed", making: { lift: { kind: "spring" } } } });
  const [shade] = plan(job).shades;
  if (shade === undefined) throw new Error("no shade");
  expect(shade.form.bar).toBeUndefined();
  const lessons = jobLessons(job)(shade);
  for (const { id, question, shade: drawn } of lessons)
    expect(/as if it hung over a cord lock/.test(question), id).toBe(drawn.lift.kind !== shade.lift.kind);
  const loads = lessons.find(({ id }) => id === "loads");
  expect(loads?.views.flatMap(({ points }) => points.map(({ part }) => part))).not.toContain("bar");
  expect(loads?.reason).toMatch(/no bar/);
});

test("of eight cords those that go through one slot together are told in one line: the lock is drawn large", () => {
  const job = jobOf({ widthMm: inches(78) }, INCHES);
  const [shade] = plan(job).shades;
  if (shade?.lift.kind !== "cord-lock") throw new Error("no lock");
  const { cords } = shade.lift;
  expect(cords.length).toBeGreaterThan(7);
  const figures = jobLessons(job)(shade).find(({ id }) => id === "threading")?.figures ?? [];
  expect(figures).toHaveLength(new Set(cords.map(({ slot, entersFrom }) => `${slot} ${entersFrom}`)).size);
  const told = figures.flatMap(({ label }) => label.replace(/^\d+\. /, "").match(/\d+/g) ?? []);
  expect(told.map(Number)).toEqual(shade.lift.threading);
});
