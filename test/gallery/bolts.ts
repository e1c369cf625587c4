import { readFileSync } from "node:fs";
import type { BoltDrawingInput } from "../../src/drawing/index.ts";
import type { ClothCutting } from "../../src/plan/index.ts";

/** Cutting plans of two invented cloths as they once were found, so that a better search does not change the drawings. */
const CLOTHS: ClothCutting[] = JSON.parse(readFileSync(new URL("bolts.json", import.meta.url), "utf8"));

export function boltInput(clothId: string, index = 0): BoltDrawingInput {
  const cutting = CLOTHS.find((one) => one.clothId === clothId);
  const bolt = cutting && "bolts" in cutting.answer ? cutting.answer.bolts[index] : undefined;
  if (cutting === undefined || bolt === undefined) throw new Error(`invalid bolt: ${clothId} ${index}`);
  return { units: { system: "imperial", ruler: "1/8 in" }, cutting, bolt };
}
