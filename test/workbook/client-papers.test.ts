import { describe, expect, test } from "vitest";
import { type JobInput, jobSchema } from "../../src/job/index.ts";
import { planAndCut } from "../../src/plan/index.ts";
import { makeWorkbook, type PrintSet } from "../../src/workbook/index.ts";
import { FONTS } from "./fonts.ts";
import { openPdf, readPages } from "./read-pdf.ts";
import { x1Job } from "./x1-job.ts";

const OFFER: JobInput["offer"] = {
  maker: "Quay workroom\n1 Quay Street",
  clientAddress: "2 Mill Lane",
  number: "2026-14",
  markUpShare: 0.25,
  depositShare: 0.5,
  validDays: 30,
  payDays: 10,
  terms: "Made to measure: not taken back.",
};

function planned(prices: Record<string, number>) {
  const job = jobSchema.parse({
    ...x1Job(),
    client: "Anna Example",
    rates: { taxShare: 0.2, currency: "GBP", prices },
    offer: OFFER,
  });
  return planAndCut(job);
}

async function printed(prices: Record<string, number>, sets: PrintSet[]) {
  const bytes = await makeWorkbook({
    ...planned(prices),
    sets,
    paper: "a4",
    fonts: FONTS,
    createdOn: new Date(2026, 10, 25),
  });
  const pages = await readPages(await openPdf(bytes));
  return pages.map(({ text }) => text).join("\n");
}

/** Every line of this job’s list at a round price, so that its price can be worked out by hand. */
function allPriced(): Record<string, number> {
  return Object.fromEntries(planned({}).plan.cost.shopping.map(({ id }) => [id, 2]));
}

const money = (amount: number) => `${amount.toFixed(2)} GBP`;

describe("papers for the client", () => {
  test("typed prices stand in the list by the unit it names, and no catalogue price is left among them", () => {
    const { plan } = planned(allPriced());
    expect(plan.cost.unpriced).toEqual([]);
    expect(plan.findings.map(({ id }) => id)).not.toContain("cost.demo-prices");
    for (const line of plan.cost.shopping) {
      // A yard is 0.9144 m exactly (international yard and pound agreement of 1959).
      const each = line.unit === "yd" ? 2 * 0.9144 : line.unit === "ft" ? 2 * 0.3048 : 2;
      expect(line.price).toBeCloseTo(each, 6);
      expect(line.cost).toBeCloseTo(line.quantity * each, 2);
    }
  });

  test("quote, order and invoice tell one price, made from materials and work, mark-up and tax", async () => {
    const prices = allPriced();
    const { cost } = planned(prices).plan;
    const net = Math.round((cost.materials + cost.labourCost) * 1.25 * 100) / 100;
    const total = Math.round((net + Math.round(net * 0.2 * 100) / 100) * 100) / 100;
    const text = await printed(prices, ["client", "order", "invoice"]);
    expect(text.match(new RegExp(money(total).replace(".", "\\."), "gu"))).toHaveLength(3);
    expect(text).toContain(money(Math.round(total * 50) / 100));
    expect(text).toContain("2026-12-25");
    expect(text).toContain("2026-12-05");
    for (const words of ["Quay workroom", "Anna Example", "2026-14", "Made to measure: not taken back."])
      expect(text).toContain(words);
    expect(text).not.toMatch(/Not to be sent|mark-up|Labour|25 %/iu);
  });

  test("with a price missing no paper passes for one to be sent", async () => {
    const { cleat: _, ...rest } = allPriced();
    const text = await printed(rest, ["client", "order", "invoice"]);
    expect(text.match(/Not to be sent yet: 1 thing on the shopping list has no price/gu)).toHaveLength(3);
  });

  test("what is signed stands over the names, however many shades are ordered", async () => {
    const job = jobSchema.parse(x1Job());
    const [room] = job.rooms;
    const [window] = room?.windows ?? [];
    if (room === undefined || window === undefined) throw new Error("no window");
    const windows = Array.from({ length: 12 }, (_, i) => ({ ...window, id: `w${i}`, name: `Window ${i}` }));
    const planned = planAndCut({ ...job, rooms: [{ ...room, windows }] }, {}, 1);
    for (const paper of ["a4", "letter"] as const) {
      for (let count = 1; count <= windows.length; count++) {
        const shadeIds = windows.slice(0, count).map(({ id }) => id);
        const bytes = await makeWorkbook({ ...planned, shadeIds, sets: ["order"], paper, fonts: FONTS });
        const pages = (await readPages(await openPdf(bytes))).map(({ text }) => text);
        const signed = pages.find((text) => text.includes("Client, date"));
        expect(signed, `${count} on ${paper}`).toMatch(/I have read what is said here/);
      }
    }
  });

  test("a label for each shade says whose it is, where it hangs and on which side it is worked", async () => {
    const text = await printed({}, ["label"]);
    for (const words of ["Anna Example", "Landing window", "Upper landing", "36 in × 60 in", "right"])
      expect(text).toContain(words);
  });

  test("a sheet for the client says for whom and where in whole words, and nothing of how its picture was worked out", async () => {
    const job = x1Job();
    for (const [place, words] of [
      ["us", "Planned for the United States, for your own home."],
      ["gb", "Planned for Great Britain, for your own home."],
    ] as const) {
      const input = {
        ...planAndCut({ ...job, place }),
        sets: ["client"],
        paper: "a4",
        fonts: FONTS,
      } as const;
      const pages = await readPages(await openPdf(await makeWorkbook(input)));
      const text = pages.map((page) => page.text).join(" ");
      expect(text).toContain(words);
      expect(text).toContain("As it hangs, let down");
      expect(text).not.toMatch(/the plan|hang as sewn|at rest/i);
    }
  });
});
