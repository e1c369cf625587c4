import type { StyleStep } from "../../shade/index.ts";
import type { StyleStepInput } from "../style.ts";
export function austrianSteps(_: StyleStepInput): StyleStep[] {
  return [];
}
