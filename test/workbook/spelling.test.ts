import { describe, expect, test } from "vitest";
import { jobLessons } from "../../src/answers/index.ts";
import { drawSheet, drawTag, knownOfTag, speltDrawing } from "../../src/drawing/index.ts";
import { type English, englishOf, spellerOf } from "../../src/job/index.ts";
import { type Plan, plan, planAndCut } from "../../src/plan/index.ts";
import { SHEETS } from "../../src/shade-plan/index.ts";
import { allLists, cuttingLists, speltTable } from "../../src/tables/index.ts";
import { makeWorkbook, PRINT_SETS, type PrintSet } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { AMERICAN, BRITISH, foreignIn, WORKS } from "../spellings.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages } from "./read-pdf.ts";

const OWN_CLOTH = "Grey cloth from the Harbour Centre";

function jobIn(place: "us" | "gb", system: "imperial" | "metric", style: "flat" | "relaxed" = "flat") {
  return jobWith(
    {
      name: "Left of the centre",
      opening: { widthsMm: [1500], heightsMm: [1700], sillAboveFloorMm: 500 },
      shade: { style, face: "own" },
    },
    {
      ...{ place, purpose: "for-sale", note: "A grey note" },
      units: system === "metric" ? { system, ruler: "1 mm" } : { system, ruler: "1/8 in" },
      workshop: { hems: { corner: "mitred" } },
      cloths: [
        {
          ...{ id: "own", name: OWN_CLOTH, usableWidthMm: 1370, massGsm: 210 },
          repeat: { verticalMm: 640, horizontalMm: 690, match: "half-drop" },
        },
      ],
    },
  );
}

function without(text: string, own: readonly string[]): string {
  return own.reduce(
    (rest, name) => rest.replaceAll(name, ""),
    text.replace(WORKS, "").replace(CUT_SHORT, ""),
  );
}

/** A name too long for its place in a drawing. */
const CUT_SHORT = /Grey cloth[\w ]*…/g;

/** What the maker typed is left; where it is broken over two lines the words are looked for without it, too. */
const OWN = [OWN_CLOTH, "Left of the centre", "A grey note"];

async function setText(made: ReturnType<typeof planAndCut>, job: ReturnType<typeof jobIn>, set: PrintSet) {
  const pdf = await makeWorkbook({
    ...{ plan: made.plan, cutting: made.cutting, sets: [set], lessonsOf: jobLessons(job) },
    ...{ paper: "letter", fonts: FONTS, createdOn: new Date(0) },
  });
  const open = await openPdf(pdf);
  const pages = await readPages(open);
  const titles = ((await open.getOutline()) ?? []).map(({ title }) => title);
  return [...pages.map(({ text }) => text), ...titles].join(" ").replace(/\s+/g, " ");
}

const PLACES = [
  ["us", "imperial", BRITISH],
  ["gb", "imperial", AMERICAN],
  ["us", "metric", AMERICAN],
] as const;

describe.each(PLACES)("words of a job in %s, %s", (place, system, foreign) => {
  const job = jobIn(place, system);
  const made = planAndCut(job, {}, 3);
  const other = jobIn(place, system, "relaxed");

  test.each(PRINT_SETS)("are of that place in the set %s", async (set) => {
    const text = without(await setText(made, job, set), OWN);
    expect(text.length).toBeGreaterThan(200);
    expect(foreignIn(text, foreign)).toEqual([]);
  });

  test("are of that place in lists and drawings", () => {
    const spell = spellerOf(made.plan.english);
    const lists = [...allLists(made.plan), ...(made.cutting ? cuttingLists(made.cutting) : [])];
    const cells = lists.flatMap((list) => {
      const { header, rows } = speltTable(list, spell);
      return [...header, ...rows.flat().filter((cell) => typeof cell === "string")];
    });
    // Ids of figures and findings: `cloth.face-length`.
    const said = cells.filter((cell) => !/^[a-z][\w-]*(?:[.-][\w-]+)+$/.test(String(cell)));
    const drawn = drawnWords(made.plan, spell).concat(drawnWords(planAndCut(other, {}, 3).plan, spell));
    expect(foreignIn(without(said.concat(drawn).join(" "), OWN), foreign)).toEqual([]);
  });
});

function drawnWords(plan: Plan, spell: (text: string) => string): string[] {
  const shade = plan.shades[0];
  if (shade === undefined) throw new Error("no shade");
  const drawings = [
    ...SHEETS.map((kind) => drawSheet(kind, plan, shade, { raise: 0 })),
    ...drawTag(shade, knownOfTag(plan, shade, new Date(0))),
  ];
  return drawings.flatMap((drawing) => {
    const { title, caption, facts, primitives } = speltDrawing(drawing, spell);
    const words = primitives.map((one) =>
      "text" in one ? (one.text ?? "") : "label" in one ? String(one.label) : "",
    );
    return [title, caption, ...facts.flatMap(({ label, text }) => [label, text]), ...words];
  });
}

test("what the maker typed stands as it was typed, in either English", async () => {
  for (const [place, system] of PLACES) {
    const job = jobIn(place, system);
    const text = await setText(planAndCut(job, {}, 3), job, "shopping");
    expect(text).toContain(OWN_CLOTH);
  }
});

test("a job with no place set is printed in the English of its reader", async () => {
  const job = jobIn("us", "imperial");
  delete job.place;
  const planned = plan(job);
  const printed = async (english?: English) => {
    const set = { plan: planned, sets: ["table"], paper: "letter", fonts: FONTS } as const;
    const bytes = await makeWorkbook({ ...set, ...(english === undefined ? {} : { english }) });
    return without((await readPages(await openPdf(bytes))).map(({ text }) => text).join(" "), OWN);
  };
  expect(foreignIn(await printed(), AMERICAN)).toEqual([]);
  expect(foreignIn(await printed(englishOf({ ...job, place: "us" })), BRITISH)).toEqual([]);
});
