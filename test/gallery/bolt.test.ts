import { expect, test } from "vitest";
import { verifyCloth } from "../../src/cutting/index.ts";
import { drawBoltPlan, drawBoltStretches, place } from "../../src/drawing/index.ts";
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
  const [first] = drawBoltStretches(boltInput("sateen", 1), 2800);
  if (first === undefined) throw new Error("nothing is drawn");
  return place(first, PAGE);
});
