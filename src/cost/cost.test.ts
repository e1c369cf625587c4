import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type HandShade, handShade as handInput } from "../../test/hand-shade.ts";
import { expectNear } from "../../test/near.ts";
import { workingOf } from "../figures/index.ts";
import { type JobInput, resolveRates, type Stock } from "../job/index.ts";
import type { Cost, ShoppingLine } from "../shade-plan/index.ts";
import { inches } from "../units/index.ts";
import { cutFromStock } from "./cut-from-stock.ts";
import { type CostInput, planCost as planShadeCost, sumCosts } from "./index.ts";
import { billableWidths } from "./labour.ts";

const RATES = resolveRates({});
const IMPERIAL = { system: "imperial", ruler: "1/8 in" } as const;
const METRIC = { system: "metric", ruler: "1 mm" } as const;

function handShade(given?: HandShade) {
  const { resolved, ...input } = handInput(given);
  return { ...input, shade: resolved };
}

const planCost = (input: Omit<CostInput, "rates">, rates: CostInput["rates"] = RATES) =>
  planShadeCost({ ...input, rates }).values;

const plain = (text: string) => text.replaceAll("\u00a0", " ");

function lineOf(cost: Cost, id: string): ShoppingLine {
  const line = cost.shopping.find((one) => one.id === id);
  if (line === undefined) throw new Error(`no line ${id}: ${cost.shopping.map((one) => one.id).join(", ")}`);
  return { ...line, needText: plain(line.needText), buyText: plain(line.buyText) };
}

/** Cloth of one shade of E4: cut 33 × 68 in out of 55 in goods. */
function e4(soldByIn: number) {
  const cloths: JobInput["cloths"] = [
    {
      id: "print",
      name: "Print, 55 in",
      usableWidthMm: inches(55),
      massGsm: 200,
      soldByMm: inches(soldByIn),
      pricePerM: 20,
    },
  ];
  return handShade({
    widthIn: 27,
    lengthIn: 58,
    layers: [{ layer: "face", cutWidthIn: 33, cutLengthIn: 68 }],
    window: { shade: { face: "print", lining: null } },
    job: { cloths },
  });
}

describe("cloth of two shades", () => {
  // “Roman shades” (2018): two shades of 27 × 58 in, each cut 33 × 68 in from 55 in cloth, 4 yd bought.
  it("E4: 2 × 68 in = 136 in = 3.78 yd, bought as 4 yd by the half yard and by the yard", () => {
    for (const soldByIn of [18, 36]) {
      const shade = planCost(e4(soldByIn), RATES);
      const { values: cost } = sumCosts({ shades: [shade, shade], rates: RATES, units: IMPERIAL });
      const line = lineOf(cost, "cloth-print");
      expect(line.quantity).toBe(4);
      expect(line.buyText).toBe("4 yd");
      // 3.778 yd in the eighths that a counter cuts.
      expect(plain(line.needText)).toBe("3 7⁄8 yd");
      // 4 yd at 20 a metre: 4 × 0.9144 m (NIST SP 811, 1 yd = 0.9144 m) × 20 = 73.152.
      expect(line.cost).toBe(73.15);
    }
  });

  it("is rounded once for the job: two shades alone would be 2 × 2 yd = 4 yd by the half yard, 3 7/8 by the eighth", () => {
    const shade = planCost(e4(4.5), RATES);
    expect(lineOf(shade.cost, "cloth-print").buyText).toBe("2 yd");
    const { values: cost } = sumCosts({ shades: [shade, shade], rates: RATES, units: IMPERIAL });
    expect(lineOf(cost, "cloth-print").buyText).toBe("3 7⁄8 yd");
  });

  it("adds the waste share to plain cloth alone", () => {
    const shade = e4(36 / 8);
    const rates = resolveRates({ wasteShare: 0.1 });
    // 68 in × 1.1 = 74.8 in = 2.078 yd → 2 1/8 yd.
    expect(lineOf(planCost(shade, rates).cost, "cloth-print").buyText).toBe("2 1⁄8 yd");
    const print = shade.shade.cloths.face;
    const patterned = {
      ...shade,
      shade: {
        ...shade.shade,
        cloths: { face: { ...print, repeat: { verticalMm: 340, match: "straight" as const } } },
      },
    };
    expect(lineOf(planCost(patterned, rates).cost, "cloth-print").buyText).toBe("2 yd");
  });

  it("is sold in tenths of a metre where the seller names no step", () => {
    const shade = handShade({
      window: { shade: { face: "f", lining: null } },
      job: {
        units: METRIC,
        cloths: [{ id: "f", name: "Linen", usableWidthMm: 1400, massGsm: 250 }],
      },
    });
    // X1: cut length 66.5 in = 1689.1 mm.
    const line = lineOf(planCost(shade, RATES).cost, "cloth-f");
    expect(line).toMatchObject({ quantity: 1.7, unit: "m", buyText: "1.7 m", needText: "1.69 m" });
  });
});

describe("the rest of X1", () => {
  const { cost } = planCost(handShade(), RATES);

  it("counts rings and eyes and buys packs", () => {
    expect(lineOf(cost, "ring-ring-12")).toMatchObject({ needText: "35", quantity: 1, unit: "pack" });
    expect(lineOf(cost, "eye-eye-12")).toMatchObject({ needText: "5", quantity: 1, unit: "pack" });
  });

  it("buys 551.0 in of cord (X1) by the whole foot", () => {
    const line = lineOf(cost, "cord-cord-1-4");
    // Cut lengths go up to the eighth: 126 1/4 + 118 1/4 + 110 1/4 + 102 1/4 + 94 1/4 = 551 1/4 in = 45.94 ft.
    expect(line).toMatchObject({ quantity: 46, unit: "ft" });
    // 46 ft × 0.3048 m × 0.30 = 4.206 (NIST SP 811: 1 ft = 0.3048 m).
    expect(line.cost).toBe(4.21);
  });

  it("buys board and bar by the stock length", () => {
    expect(lineOf(cost, "board-board-1x2")).toMatchObject({
      quantity: 1,
      buyText: "1 length of 8 ft",
      cost: 6,
    });
    expect(lineOf(cost, "bar-bar-steel-19x3")).toMatchObject({ quantity: 1, cost: 9 });
  });

  it("leaves out what has no price and says so", () => {
    expect(cost.unpriced).toContain("Cleat with two screws");
    expect(cost.unpriced).toContain("Cord connector");
    expect(cost.unpriced).not.toContain("Four-slot lock");
  });

  it("takes about as long as the trade says: a lined flat shade with rings 3 to 6 h (recalled from memory)", () => {
    const minutes = cost.labour.reduce((total, line) => total + line.minutes, 0);
    expect(minutes / 60).toBeGreaterThanOrEqual(3);
    expect(minutes / 60).toBeLessThanOrEqual(6);
  });

  it("adds up: lines to the cent, tax, total", () => {
    const taxed = planCost(handShade(), resolveRates({ taxShare: 0.0825 })).cost;
    const cents = (amount: number) => Math.round(amount * 100);
    const materials = taxed.shopping.reduce((total, line) => total + cents(line.cost ?? 0), 0);
    const labour = taxed.labour.reduce((total, line) => total + cents(line.cost ?? 0), 0);
    expect(cents(taxed.materials)).toBe(materials);
    expect(cents(taxed.labourCost)).toBe(labour);
    expectNear(taxed.tax, (materials + labour) * 0.000825, 0.005, "tax");
    expect(cents(taxed.total)).toBe(materials + labour + cents(taxed.tax));
  });

  it("writes its workings down", () => {
    const { values, workings } = planShadeCost({ ...handShade(), rates: RATES });
    const written = workings.map(workingOf);
    expect(written.map(({ id }) => id)).toEqual(["cost.sewn", "cost.thread", "cost.tax", "cost.total"]);
    expect(written.find(({ id }) => id === "cost.total")?.value).toBe(values.cost.total);
  });
});

describe("labour by the width", () => {
  it("“Workroom price terms”: 2 × 118 in is 236 / 54 = 4.37, so 5 widths", () => {
    expect(billableWidths(2, inches(118))).toBe(5);
    expect(billableWidths(3, inches(54))).toBe(3);
    expect(billableWidths(2, inches(48))).toBe(2);
  });
});

describe("pieces beside the panels", () => {
  const shade = handShade();
  const bolts = (lengthMm: number, clothId = "cotton-lining") => ({
    ...shade.cloth,
    trimBolts: [
      { clothId, clothName: "", usableWidthMm: inches(54), lays: [], fromMm: inches(66.5), lengthMm },
    ],
  });
  const liningOf = (cloth: typeof shade.cloth) =>
    planCost({ ...shade, cloth }, RATES).needs.find((need) => need.id === "cloth-cotton-lining");

  it("take nothing more where they lie beside them", () => {
    expect(liningOf(bolts(0))).toMatchObject({ cutsMm: [inches(66.5)] });
  });

  it("are bought where they do not", () => {
    expect(liningOf(bolts(inches(6)))).toMatchObject({ cutsMm: [inches(66.5), inches(6)] });
  });

  it("are bought of a cloth of their own", () => {
    const banded = {
      ...shade.shade,
      bandCloths: { banding: { ...shade.shade.cloths.face, id: "stripe" } },
    };
    const { needs } = planCost({ ...shade, shade: banded, cloth: bolts(inches(9), "stripe") });
    expect(needs.find((need) => need.id === "cloth-stripe")).toMatchObject({ cutsMm: [inches(9)] });
  });
});

describe("what is at hand", () => {
  const shade = planCost(handShade(), RATES);
  const withStock = (stock: Stock, count = 1) =>
    sumCosts({ shades: Array.from({ length: count }, () => shade), rates: RATES, units: IMPERIAL, stock });

  it("is taken off and shown", () => {
    const { values: cost, findings } = withStock({
      cloth: [{ id: "r1", cloth: "plain-cotton", lengthMm: inches(70) }],
      lengths: [{ id: "s1", part: "board-1x2", lengthMm: inches(40) }],
    });
    expect(lineOf(cost, "cloth-plain-cotton")).toMatchObject({
      quantity: 0,
      buyText: "none: at hand",
      cost: 0,
    });
    expectNear(lineOf(cost, "cloth-plain-cotton").onHand ?? 0, 66.5 / 36, 1e-6, "yards from stock");
    expect(lineOf(cost, "board-board-1x2")).toMatchObject({ quantity: 0, onHand: 1 });
    expect(findings.map((finding) => finding.id)).not.toContain("cost.cloth-short");
  });

  it("that is short says by how much", () => {
    const stock = { cloth: [{ id: "r1", cloth: "plain-cotton", lengthMm: inches(70) }] };
    const { values: cost, findings } = withStock(stock, 2);
    expect(lineOf(cost, "cloth-plain-cotton").buyText).toBe("1 7⁄8 yd");
    const short = findings.find((finding) => finding.id === "cost.cloth-short");
    expect(plain(short?.text ?? "")).toBe(
      "Plain cotton, 54 in: 1 piece at hand, 1 7⁄8 yd in all; 1 7⁄8 yd of it serves. The cuts take 3 3⁄4 yd, so 1 7⁄8 yd must be bought. Ask for the same dye lot, or cut every piece from the new length.",
    );
  });

  it("serves only where a cut comes off in one piece of its width", () => {
    const { values: cost, findings } = withStock({
      cloth: [
        { id: "r1", cloth: "plain-cotton", lengthMm: inches(66) },
        { id: "r2", cloth: "plain-cotton", lengthMm: inches(90), widthMm: inches(41) },
      ],
    });
    expect(lineOf(cost, "cloth-plain-cotton").onHand).toBeUndefined();
    expect(findings.find((finding) => finding.id === "cost.cloth-short")?.text).toContain(
      "none is long and wide enough",
    );
  });
});

describe("a part longer than it is sold", () => {
  it("is a finding, and stays out of the price", () => {
    const shade = handShade();
    const long = { ...shade, board: { ...shade.board, lengthMm: 2600, cutMm: 2600 } };
    const { values, findings } = planShadeCost({ ...long, rates: RATES });
    const { cost } = values;
    expect(findings.map((finding) => finding.id)).toEqual(["cost.longer-than-sold"]);
    expect(lineOf(cost, "board-board-1x2")).toMatchObject({ quantity: 1 });
    expect(cost.unpriced).toContain("1 × 2 board (19 × 38 mm)");
  });
});

describe("first-fit decreasing over the whole job", () => {
  // Found by search: alone 60 holds 23 + 19 + 15, and 23 + 23 + 7 + 3 beside 27 + 15 + 15; together it takes four.
  it("never buys more lengths than the shades would by themselves", () => {
    const alone = (cutsMm: number[], quantity: number) => ({
      cost: { ...planCost(handShade()).cost, labour: [] },
      quantities: new Map([["rib", quantity]]),
      needs: [
        {
          sort: "lengths" as const,
          id: "rib",
          group: "hardware" as const,
          label: "Rib",
          stockId: "rib",
          cutsMm,
          stockMm: 60,
          kerfMm: 0,
          noun: "length",
        },
      ],
    });
    const shades = [alone([23, 19, 15], 1), alone([23, 3, 23, 15, 15, 7, 27], 2)];
    expect(
      cutFromStock({ cutsMm: [23, 19, 15, 23, 3, 23, 15, 15, 7, 27], inStockMm: [], newMm: 60, kerfMm: 0 })
        .bought,
    ).toBe(4);
    const { values: cost } = sumCosts({ shades, rates: RATES, units: METRIC });
    expect(lineOf(cost, "rib")).toMatchObject({ quantity: 3, buyText: "3 lengths of 0.06 m" });
  });
});

describe("properties", () => {
  const shades = fc.array(
    fc.record({ widthIn: fc.integer({ min: 12, max: 53 }), lengthIn: fc.integer({ min: 20, max: 120 }) }),
    { minLength: 1, maxLength: 8 },
  );

  it("buys at least what is used, and never more together than shade by shade", () => {
    fc.assert(
      fc.property(shades, (sizes) => {
        const costs = sizes.map((size) => planCost(handShade(size), RATES));
        const { values: cost } = sumCosts({ shades: costs, rates: RATES, units: IMPERIAL });
        for (const line of cost.shopping) {
          const alone = costs.reduce((total, one) => total + lineOf(one.cost, line.id).quantity, 0);
          expect(line.quantity).toBeLessThanOrEqual(alone + 1e-9);
        }
        const lengthsIn = sizes.reduce((total, { lengthIn }) => total + lengthIn + 6.5, 0);
        expect(lineOf(cost, "cloth-plain-cotton").quantity * 36).toBeGreaterThanOrEqual(lengthsIn - 1e-6);
        const boardsIn = sizes.reduce((total, { widthIn }) => total + widthIn - 0.25, 0);
        expect(lineOf(cost, "board-board-1x2").quantity * 96).toBeGreaterThanOrEqual(boardsIn);
      }),
      { seed: 20, numRuns: 100 },
    );
  });
});
