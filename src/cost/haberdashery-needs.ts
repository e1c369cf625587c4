import type { NeedsInput } from "./cost-input.ts";
import { countedNeed } from "./make-need.ts";
import type { Need } from "./need.ts";
import { clothStepMm, clothUnit } from "./sold.ts";

/** Tapes by the length and weights by the piece, as the style asks for them. */
export function haberdasheryNeeds({ shade, form }: NeedsInput): Need[] {
  return form.haberdashery
    .filter(({ fromFace, count }) => fromFace !== true && count > 0)
    .map(({ id, label, count, lengthMm, piece }): Need => {
      if (piece === true) return countedNeed(id, "sundries", label, count);
      return {
        sort: "running",
        id,
        group: "sundries",
        label,
        stockId: id,
        cutsMm: Array.from({ length: count }, () => lengthMm),
        stepMm: clothStepMm(shade.units),
        unit: clothUnit(shade.units),
      };
    });
}
