import type { StyleStep } from "../../shade/index.ts";
import type { StyleStepInput } from "../style.ts";

export function balloonSteps(_input: StyleStepInput): StyleStep[] {
  return [];
}
