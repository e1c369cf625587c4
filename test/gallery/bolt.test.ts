import { expect, test } from "vitest";
import { verifyCloth } from "../../src/cutting/index.ts";
import { boltStretches, drawBoltPlan, place } from "../../src/drawing/index.ts";
import { boltInput } from "./bolts.ts";
import { draws } from "./gallery.ts";
import { PAGE } from "./papers.ts";

test("the kept plans pass their check", () => {
  for (const clothId of ["rookery", "sateen"]) {
    const { cutting } = boltInput(clothId);
    if ("bolts" in cutting.answer) expect(verifyCloth(cutting.problem, cutting.answer)).toEqual([]);
  }
});

draws("bolt-half-drop", () => place(drawBoltPlan(boltInput("rookery")), PAGE));

draws("bolt-flaw", () => place(drawBoltPlan(boltInput("sateen")), PAGE));

draws("bolt-stretch", () => {
  const input = boltInput("sateen", 1);
  return place(drawBoltPlan(input, boltStretches(input, 2800)[0]), PAGE);
});
