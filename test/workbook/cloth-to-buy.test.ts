import { expect, test } from "vitest";
import { planAndCut } from "../../src/plan/index.ts";
import { clothLengthText } from "../../src/units/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages } from "./read-pdf.ts";

const plainly = (text: string) => text.replaceAll(/\s+/g, " ");

test("a book has one length to buy of each cloth: that of the cloth as it is cut", async () => {
  const job = jobWith(
    { opening: { widthsMm: [1800], heightsMm: [1500] }, shade: { style: "flat", face: "print" } },
    {
      units: { system: "metric", ruler: "1 mm" },
      cloths: [
        {
          id: "print",
          name: "Large print",
          usableWidthMm: 1370,
          massGsm: 200,
          repeat: { verticalMm: 320, match: "half-drop" },
        },
      ],
    },
  );
  const { plan, cutting } = planAndCut(job, {}, 50);
  const bought = plan.cost.shopping.find(({ label }) => label === "Large print")?.buyText ?? "";
  const alone = plan.shades[0]?.cloth.layers.find(({ layer }) => layer === "face")?.buyMm ?? 0;
  // Cut together its joined widths take less than by whole repeats: else this would show nothing.
  expect(plainly(bought)).not.toBe(plainly(clothLengthText(alone, plan.units)));
  const pdf = await openPdf(
    await makeWorkbook({ plan, cutting, sets: ["table", "shopping"], paper: "a4", fonts: FONTS }),
  );
  const pages = (await readPages(pdf)).map(({ text }) => plainly(text));
  const told = pages.filter((text) => text.includes(`Large print ${plainly(bought)}`));
  expect(told.length).toBe(1);
  expect(told[0]).toContain("Cloth to buy");
  expect(pages.join(" ")).not.toContain(`Large print ${plainly(clothLengthText(alone, plan.units))}`);
  expect(pages.find((text) => text.includes("Shopping list"))).toContain(plainly(bought));
});
