import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { offerOf } from "./offer.ts";

const shade = (shadeId: string, materials: number, labourCost: number) => ({
  shadeId,
  cost: { materials, labourCost },
});

describe("what a client is asked for", () => {
  // Worked by hand: 412.40 + 286.00 = 698.40, a quarter on is 873.00; 8.25 % tax is 72.0225; a half of 945.02 is 472.51.
  test("mark-up before tax, deposit on the whole", () => {
    const cost = { currency: "USD", materials: 412.4, labourCost: 286, unpriced: [] };
    const { values } = offerOf(cost, [shade("a", 412.4, 286)], 0.0825, {
      markUpShare: 0.25,
      depositShare: 0.5,
    });
    expect(values).toMatchObject({ net: 873, tax: 72.02, total: 945.02, deposit: 472.51, balance: 472.51 });
    expect(values.shades).toEqual([{ shadeId: "a", price: 873 }]);
  });

  // 100.00 over three equal shades: 33.34, 33.33 and 33.33, as every bookkeeping text has it.
  test("cents that do not divide go to the first", () => {
    const cost = { currency: "EUR", materials: 60, labourCost: 40, unpriced: [] };
    const alone = ["a", "b", "c"].map((id) => shade(id, 30, 10));
    expect(offerOf(cost, alone, 0).values.shades.map(({ price }) => price)).toEqual([33.34, 33.33, 33.33]);
  });

  test("what has no price is counted, not guessed", () => {
    const cost = { currency: "EUR", materials: 0, labourCost: 10, unpriced: ["Cleat", "Staples"] };
    expect(offerOf(cost, [shade("a", 0, 10)], 0).values.unpriced).toBe(2);
  });

  test("the prices of the shades add up to the whole, and all of it is paid", () => {
    const money = fc.integer({ min: 0, max: 5_000_000 }).map((cents) => cents / 100);
    fc.assert(
      fc.property(
        money,
        money,
        fc.array(fc.tuple(money, money), { minLength: 1, maxLength: 40 }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (materials, labourCost, alone, taxShare, depositShare) => {
          const shades = alone.map(([m, l], i) => shade(String(i), m, l));
          const cost = { currency: "USD", materials, labourCost, unpriced: [] };
          const { values } = offerOf(cost, shades, taxShare, { markUpShare: 0.4, depositShare });
          const cents = (amount: number) => Math.round(amount * 100);
          expect(values.shades.reduce((sum, { price }) => sum + cents(price), 0)).toBe(cents(values.net));
          expect(cents(values.deposit) + cents(values.balance)).toBe(cents(values.total));
          expect(cents(values.net) + cents(values.tax)).toBe(cents(values.total));
          for (const { price } of values.shades) expect(price).toBeGreaterThanOrEqual(0);
        },
      ),
    );
  });
});
