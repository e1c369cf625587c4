import type { Row } from "../../shade-plan/index.ts";
import type { Fact } from "../model.ts";
import { lengthFact, type SheetInput } from "./sheet-input.ts";

/** A row above the hem; of one that slants both its ends. */
export function rowFacts({ number, fromHemMm, ends }: Row, units: SheetInput["units"]): Fact[] {
  if (ends === undefined) return [lengthFact(`Row ${number} above the hem`, fromHemMm, units)];
  return [
    lengthFact(`Row ${number} above the hem at the left edge seen from the room`, ends.leftFromHemMm, units),
    lengthFact(`Row ${number} above the hem at the right edge`, ends.rightFromHemMm, units),
  ];
}
