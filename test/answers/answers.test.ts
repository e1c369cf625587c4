import fc from "fast-check";
import { expect, test } from "vitest";
import {
  answerTo,
  findQuestions,
  QUESTIONS,
  shadeFacts,
  type TypedShade,
  typedJob,
  USUAL_SHADE,
} from "../../src/answers/index.ts";
import { openJob, STYLES } from "../../src/job/index.ts";
import { plan } from "../../src/plan/index.ts";
import { inches, type UnitChoice } from "../../src/units/index.ts";
import { anyJob } from "../any-job.ts";

const IMPERIAL: UnitChoice = { system: "imperial", ruler: "1/16 in" };
const METRIC: UnitChoice = { system: "metric", ruler: "1 mm" };

function factsOf(typed: Partial<TypedShade>, units = IMPERIAL) {
  const made = typedJob({ ...USUAL_SHADE, ...typed }, units);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  const facts = shadeFacts(made.job, 0, 0);
  if (facts === undefined) throw new Error("no shade");
  return facts;
}

const answered = (id: string, typed: Partial<TypedShade> = {}, units = IMPERIAL) => {
  const { figures, ...rest } = answerTo(id, factsOf(typed, units));
  const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll("⁄", "/");
  return {
    ...rest,
    text: plain(rest.text),
    figure: (label: string) => {
      const found = figures.find((one) => one.label === label);
      return found === undefined ? undefined : plain(found.text);
    },
  };
};

/** In the words of people, not in ours; which of all questions is meant. */
test.each([
  ["can the lock serve as an eye?", "lock-as-eye"],
  ["do I need a screw eye for the last column or just the lock", "lock-as-eye"],
  ["can I use any cord", "any-cord"],
  ["which side faces out", "which-side-out"],
  ["is my lock on backwards", "which-side-out"],
  ["lock at the very end", "lock-at-the-end"],
  ["why does it slip", "lock-slips"],
  ["the lock won't hold", "lock-slips"],
  ["cord jammed", "lock-jams"],
  ["my cords are fraying", "cord-frays"],
  ["shade creeps down", "will-not-stay"],
  ["how much cloth", "how-much-cloth"],
  ["how many yards of fabric", "how-much-cloth"],
  ["may I sell it", "may-i-sell"],
  ["selling to clients legal?", "may-i-sell"],
  ["ring spacing", "rows-apart"],
  ["half drop", "pattern-repeat"],
  ["how long cords", "cord-lengths"],
  ["crooked hem", "hem-not-level"],
  ["pinholes", "points-of-light"],
  ["what are the brackets screwed into", "hold-up"],
  ["cordles", "without-cords"],
])("“%s” is the question %s", (words, id) => {
  expect(findQuestions(words)[0]?.id).toBe(id);
});

test("words that nobody asks with find nothing, and every question finds itself", () => {
  expect(findQuestions("zxqv")).toEqual([]);
  expect(findQuestions("is it the of a")).toEqual([]);
  expect(new Set(QUESTIONS.map(({ id }) => id)).size).toBe(QUESTIONS.length);
  for (const { id, question } of QUESTIONS) expect(findQuestions(question)[0]?.id).toBe(id);
});

// Flat lined, 36 × 60 in, headrail allowance 3 in, rows at most 8 in apart: worked by hand from the published
// half-fold rule, f = (L − T) / N with N odd (“Calculating pockets spacing”).
test("rows and raised height are those of the half-fold rule done by hand", () => {
  const typed = { headrailMm: inches(3) };
  const rows = answered("rows-apart", typed);
  expect(rows.text).toBe("7 rows, the first 3 13/16 in above the hem, then every 7 5/8 in.");
  expect(rows.figure("Number of half folds, odd")).toBe("15");
  expect(rows.figure("Row 7 above the hem")).toBe("49 3/8 in");
  expect(answered("raised-height", typed).text).toBe("6 13/16 in, from the top line to the hem.");
});

// ceil((36 − 2·2) / 10) + 1 columns, (36 − 2·2) / 4 apart (“How far apart do I space my rings”, its count corrected).
test("columns follow from the width alone", () => {
  expect(answered("how-many-cords").text).toBe(
    "One for each column of rings: 5, 8 in apart, 35 rings in all.",
  );
});

// A repeat of 13 1/2 in: 65 1/2 in are raised to 67 1/2 in (The Encyclopaedia of Curtains: up, never down).
test("a pattern raises each drop to whole repeats, and what is bought is told in eighths of a yard", () => {
  const patterned = answered("pattern-repeat", { repeatMm: inches(13.5), match: "straight" });
  expect(patterned.text).toMatch(/^Each of 1 drop is raised to whole repeats of 13 1\/2 in: 67 1\/2 in/);
  // A whole repeat stands on the hem, so the first cut lies 5 in into one: 5 + 65 1/2 in are sold as 2 yd.
  expect(
    answered("how-much-cloth", { repeatMm: inches(13.5) }).figure("Face: length to buy, cut by itself"),
  ).toBe("2 yd");
  expect(answered("pattern-repeat").text).toMatch(/^Nothing: this cloth is plain/);
});

test("a width beyond the cloth asks for another, and metric numbers are told in metres", () => {
  expect(answered("how-much-cloth", { widthMm: 1500, clothMm: 1370 }, METRIC).text).toMatch(
    /^Face .+ m \(2 widths\)/,
  );
});

test("thin cord is refused by the lock at hand where more of it are asked for than its inner slots take", () => {
  const { text, figure } = answered("any-cord");
  expect(text).toMatch(/takes 1\.4 mm and 1\.8 mm for 5 cords/);
  expect(figure("Lift cord 0.9 mm")).toMatch(/inner slots/);
  // Under every gap and range of the locks at hand.
  expect(answered("lock-jams", { cordMm: 0.6 }).text).toMatch(
    /^The numbers point to this: the cord is thinner/,
  );
});

test("selling is answered with what was read for each place, and never with a yes", () => {
  const all = answered("may-i-sell");
  expect(all.figure("Canada")).toMatch(/^\d+ failed, \d+ not proven/);
  expect(all.text).toMatch(/no plan can answer it/);
  const { text, figures } = answerTo("may-i-sell", factsOf({ place: "ca" }));
  expect(figures.map(({ label }) => label)).toEqual(["Canada"]);
  expect(text).toMatch(/sold there:$/);
});

test("a number that no shade can have is told by its name", () => {
  const made = typedJob({ ...USUAL_SHADE, widthMm: 1 }, IMPERIAL);
  expect(made.ok ? [] : made.issues.map(({ number }) => number)).toEqual(["widthMm"]);
  const cord = typedJob({ ...USUAL_SHADE, cordMm: 90 }, IMPERIAL);
  expect(cord.ok ? [] : cord.issues.map(({ number }) => number)).toEqual(["cordMm"]);
});

const NO_NUMBER = /NaN|Infinity|undefined|\[object/;

test("every question has an answer in words for every style", () => {
  for (const style of STYLES) {
    const made = typedJob(USUAL_SHADE, IMPERIAL);
    if (!made.ok) throw new Error("invalid numbers");
    const [room] = made.job.rooms;
    if (room?.windows[0]) room.windows[0].shade.style = style;
    const facts = shadeFacts(made.job, 0, 0);
    if (facts === undefined) throw new Error("no shade");
    for (const { id } of QUESTIONS) {
      const said = JSON.stringify(answerTo(id, facts));
      expect(said, `${style} ${id}`).not.toMatch(NO_NUMBER);
    }
  }
});

test("every question has an answer for any shade of any job", () => {
  fc.assert(
    fc.property(anyJob(), fc.constantFrom(...QUESTIONS), (input, card) => {
      const opened = openJob(input);
      if (!opened.ok) throw new Error("invalid job");
      const { job } = opened;
      const room = job.rooms.findIndex(({ windows }) => windows.length > 0);
      fc.pre(room >= 0);
      const facts = shadeFacts(job, room, 0);
      if (facts === undefined) throw new Error("no shade");
      const { text, reason, figures } = card.answer(facts);
      expect([text, reason, ...figures.map((one) => one.text)].join(" ")).not.toMatch(NO_NUMBER);
      expect(text).toMatch(/[.:]$/);
    }),
    { numRuns: 60 },
  );
});

test("the lock of a shade without one is that which the same shade would have", () => {
  const made = typedJob(USUAL_SHADE, IMPERIAL);
  if (!made.ok) throw new Error("invalid numbers");
  const { job } = made;
  const lift = job.rooms[0]?.windows[0]?.shade.making?.lift;
  if (lift) lift.kind = "spring";
  const facts = shadeFacts(job, 0, 0);
  expect(plan(job).shades[0]?.lift.kind).toBe("spring");
  expect(facts?.locked()?.lift.kind).toBe("cord-lock");
});
