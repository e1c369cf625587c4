import { expect, test } from "vitest";
import { planAndCut } from "../../src/plan/index.ts";
import { cuttingLists, readableTable } from "../../src/tables/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages } from "./read-pdf.ts";

/** Ids as a program makes them: nothing that anyone would say. */
const IDS = ["k7q2zz", "w9x4zz", "b3v8zz"];
const [UNNAMED = "", NAMED = "", BOARD = ""] = IDS;

test("what is in stock is printed by its name, or told as a piece in stock, never by its id", async () => {
  const job = jobWith(
    { shade: { style: "flat", face: "plain-cotton" } },
    {
      stock: {
        cloth: [
          { id: UNNAMED, cloth: "plain-cotton", lengthMm: 2600 },
          { id: NAMED, name: "Left from the bay", cloth: "plain-cotton", lengthMm: 900 },
        ],
        lengths: [{ id: BOARD, part: "board-1x2", lengthMm: 2400 }],
      },
    },
  );
  const { plan, cutting } = planAndCut(job, {}, 3);
  if (cutting === undefined) throw new Error("no cutting plan");
  const sets = ["cutting", "shopping", "table", "steps", "findings"] as const;
  const pdf = await openPdf(await makeWorkbook({ plan, cutting, sets, paper: "a4", fonts: FONTS }));
  const pages = (await readPages(pdf)).map(({ text }) => text).join(" ");
  const lists = cuttingLists(cutting)
    .map((list) => readableTable(list, plan.units.system))
    .flatMap(({ rows }) => rows.flat())
    .join(" ");
  for (const words of [pages, lists]) {
    expect(words).toContain("Piece 1 in stock");
    for (const id of IDS) expect(words).not.toContain(id);
  }
});
