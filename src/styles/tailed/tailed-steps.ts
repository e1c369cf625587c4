import type { StyleStep } from "../../shade/index.ts";
import type { StyleStepInput } from "../style.ts";

export function tailedSteps(_input: StyleStepInput): StyleStep[] {
  return [];
}
