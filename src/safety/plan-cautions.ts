import type { Caution } from "../shade-plan/index.ts";
import type { CautionInput } from "./caution-input.ts";
import { cordCautions } from "./cord-cautions.ts";
import { workCautions } from "./work-cautions.ts";

export type { CautionInput } from "./caution-input.ts";

/**
 * The usual cautions for the first sheet, with this shade's own numbers, made when someone reads them.
 * Nothing here says that a rule is kept: the review against the place's rules is a room of its own.
 */
export function planCautions(input: CautionInput): Caution[] {
  return [...cordCautions(input), ...workCautions(input)];
}
