import fc from "fast-check";
import { expect, test } from "vitest";
import { drawSheet } from "../src/drawing/index.ts";
import type { Job } from "../src/job/index.ts";
import { type Plan, planAndCut } from "../src/plan/index.ts";
import { SHEETS } from "../src/shade-plan/index.ts";
import { SOURCES } from "../src/sources/index.ts";
import { allLists, cuttingLists, readableTable } from "../src/tables/index.ts";
import { anyJob } from "./arbitrary-job.ts";
import { pinned } from "./pinned.ts";
import { workroomJob } from "./workroom-job.ts";

/**
 * What nobody says over a counter or reads off a ruler. Cloth is told in eighths of a yard, what is cut by a ruler in
 * its own unit, and what is there is never told as nought.
 */
const NOT_SPOKEN: readonly (readonly [what: string, pattern: RegExp])[] = [
  ["yards with decimals", /\d\.\d+ yd\b/],
  ["a yard of finer parts than eighths", /⁄(?:16|32|64) yd\b/],
  ["an inch and more with decimals", /(?<![\d.])[1-9]\d*\.\d+ in\b/],
  ["feet of a bar or board", /\bft in all\b/],
  ["feet with decimals", /\d\.\d+ ft\b/],
  ["nought held against nought", /\b0 (in|mm)\b[^.;]*\ballowed 0 \1\b/],
  ["fractions that can be reduced", /\b(?:2⁄4|2⁄8|4⁄8|6⁄8|2⁄16|4⁄16|6⁄16|8⁄16|10⁄16|12⁄16|14⁄16)\b/],
  ["a number with a long tail", /\d\.\d{4,} ?(?:in|mm|cm|m|ft|yd|kg|lb|N)\b/],
];

/** Workings have their values beside a formula, which is reckoned with, not spoken; a place in a source is quoted. */
const NOT_READ = new Set(["workings", "at"]);

/** Texts under any other name of a plan. */
function textsOf(value: unknown, found: string[] = []): string[] {
  if (typeof value === "string") found.push(value);
  else if (typeof value === "object" && value !== null)
    for (const [key, part] of Object.entries(value)) if (!NOT_READ.has(key)) textsOf(part, found);
  return found;
}

function allTexts(plan: Plan, cutting: Parameters<typeof cuttingLists>[0] | undefined): string[] {
  const lists = [...allLists(plan), ...(cutting === undefined ? [] : cuttingLists(cutting))]
    .map((list) => readableTable(list, plan.units.system))
    .filter(({ name }) => name !== "workings-list");
  const [shade] = plan.shades;
  const drawings =
    shade === undefined ? [] : SHEETS.map((kind) => drawSheet(kind, plan, shade, { raise: 1 }));
  return [
    ...textsOf(plan),
    ...lists.flatMap(({ rows }) => rows.flat().filter((cell) => typeof cell === "string")),
    ...drawings.flatMap(({ title, caption, facts, primitives }) =>
      textsOf({ title, caption, facts, primitives }),
    ),
  ];
}

/** Places in sources, as they are quoted wherever a source is named. */
function quotesOf(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value !== "object" || value === null) return found;
  for (const [key, part] of Object.entries(value)) {
    if (key === "at" && typeof part === "string") found.add(part);
    else quotesOf(part, found);
  }
  return found;
}

/** What sources are said to hold, in their own figures. */
const NOTES = Object.values(SOURCES).flatMap((source) => ("note" in source ? [String(source.note)] : []));

function unquoted(text: string, quotes: ReadonlySet<string>): string {
  return [...quotes].reduce((rest, quote) => rest.replaceAll(quote, ""), text);
}

test("the words that are looked for are found", () => {
  const said = [
    "1.819 yd",
    "3 5⁄16 yd",
    "3.5 in",
    "3 ft in all",
    "7.9 ft",
    "it sags 0 in, allowed 0 in",
    "2⁄8 in",
    "3.14159 mm",
  ];
  for (const [i, [, pattern]] of NOT_SPOKEN.entries()) expect(said[i]).toMatch(pattern);
  for (const fine of ["1 7⁄8 yd", "35 3⁄8 in", "0.118 in", "46 ft", "1.4 mm", "2.75 m"])
    for (const [, pattern] of NOT_SPOKEN) expect(fine).not.toMatch(pattern);
});

test.each([
  ["any job", anyJob],
  ["jobs as a workroom has them", workroomJob],
] as const)("lengths are told as they are spoken: %s", (name, jobs) => {
  fc.assert(
    fc.property(jobs as fc.Arbitrary<Job>, (job) => {
      const { plan, cutting } = planAndCut(job, {}, 3);
      const quotes = quotesOf(plan, new Set(NOTES));
      const texts = allTexts(plan, cutting).map((one) => unquoted(one, quotes).replaceAll("\u00a0", " "));
      for (const text of texts)
        for (const [what, pattern] of NOT_SPOKEN)
          expect(pattern.exec(text)?.[0], `${what}: ${text}`).toBeUndefined();
    }),
    {
      numRuns: 12,
      endOnFailure: true,
      examples: pinned(import.meta.url, `lengths are told as they are spoken: ${name}`),
    },
  );
});
