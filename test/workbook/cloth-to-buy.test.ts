import { expect, test } from "vitest";
import { moneyText } from "../../src/figures/index.ts";
import { planAndCut } from "../../src/plan/index.ts";
import { clothLengthText } from "../../src/units/index.ts";
import { makeWorkbook } from "../../src/workbook/index.ts";
import { jobWith } from "../job-with.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages } from "./read-pdf.ts";

const plainly = (text: string) => text.replaceAll(/\s+/g, " ");

/** One shade of two widths of a large print: cut together they take less than by whole repeats. */
const ONE = jobWith(
  { opening: { widthsMm: [1800], heightsMm: [1500] }, shade: { style: "flat", face: "print" } },
  {
    units: { system: "metric", ruler: "1 mm" },
    rates: { taxShare: 0.2 },
    cloths: [
      {
        id: "print",
        name: "Large print",
        usableWidthMm: 1370,
        massGsm: 200,
        pricePerM: 40,
        repeat: { verticalMm: 320, match: "half-drop" },
      },
    ],
  },
);

const SUMS = ["cost.tax", "cost.total"];

test("a book has one length to buy of each cloth: that of the cloth as it is cut", async () => {
  const { plan, cutting } = planAndCut(ONE, {}, 50);
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

test("what a job of one shade costs is one sum, in its workings and on its shopping list: as its cloth is cut", async () => {
  const { plan, cutting } = planAndCut(ONE, {}, 50);
  const [shade] = plan.shades;
  const { materials, labourCost, tax, total } = plan.cost;
  // 40 a metre of what is bought, and of nothing else with a price.
  const line = plan.cost.shopping.find(({ label }) => label === "Large print");
  expect(line?.cost).toBeCloseTo((line?.quantity ?? 0) * 40, 2);
  const sums = shade?.workings.filter(({ id }) => SUMS.includes(id)) ?? [];
  expect(sums.map(({ value }) => value)).toEqual([tax, total]);
  expect(sums[0]?.inputs.map(({ value }) => value)).toEqual([materials, labourCost, 0.2]);
  expect(shade?.cost).toEqual(plan.cost);
  const pdf = await openPdf(
    await makeWorkbook({ plan, cutting, sets: ["workings", "shopping"], paper: "a4", fonts: FONTS }),
  );
  const text = plainly((await readPages(pdf)).map((page) => page.text).join(" "));
  // Once as the result of its formula, once at the foot of the list.
  expect(text.split(plainly(moneyText(total, plan.cost.currency))).length - 1).toBe(2);
  expect(text).not.toContain("this shade alone");
});

test("what one of several shades takes alone is called so in its workings", () => {
  const [room] = ONE.rooms;
  const [window] = room?.windows ?? [];
  if (room === undefined || window === undefined) throw new Error("no window");
  const { plan } = planAndCut(
    { ...ONE, rooms: [{ ...room, windows: [window, { ...window, id: "other" }] }] },
    {},
    50,
  );
  for (const { workings } of plan.shades) {
    expect(workings.filter(({ id }) => SUMS.includes(id)).map(({ label }) => label)).toEqual([
      "Tax, this shade alone",
      "Total, this shade alone",
    ]);
    expect(workings.find(({ id }) => id === "cloth.face-buy")?.label).toBe(
      "Face: length to buy, cut by itself",
    );
  }
  expect(plan.workings.map(({ label }) => label)).toEqual(["Tax", "Total"]);
});
