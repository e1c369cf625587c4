import { expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { planAndCut } from "../plan/index.ts";
import { cuttingLists } from "./cutting-lists.ts";

test("what a plan takes stands beside the unit that it is counted in: a price never under millimetres", () => {
  const { cutting } = planAndCut(
    jobWith({ id: "east", name: "East", opening: { widthsMm: [900], heightsMm: [1500] } }),
  );
  if (cutting === undefined) throw new Error("no cutting plan");
  const gaps = cuttingLists(cutting).find(({ name }) => name === "cutting-gaps");
  const at = (column: string) => gaps?.header.indexOf(column) ?? -1;
  for (const lengths of cutting.lengths) {
    const row = gaps?.rows.find(([what]) => what === lengths.name);
    if (lengths.answer.kind === "infeasible") continue;
    const bought = lengths.answer.plan.bars.map(({ stockId }) => lengths.stockPrices[stockId]);
    const priced = bought.length > 0 && bought.every((price) => price !== undefined);
    expect(row?.[at("in")], lengths.name).toBe(priced ? "money" : "mm");
    if (priced) {
      const sum = bought.reduce<number>((all, price) => all + (price ?? 0), 0);
      expect(row?.[at("takes")]).toBeCloseTo(sum, 1);
    }
  }
  expect(gaps?.header.some((name) => name.endsWith("Mm"))).toBe(false);
});
