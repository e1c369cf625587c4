import { hasFigure, type ShadePlan } from "../../plan/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";
import type { Fact, Ref } from "../model.ts";

/** What every sheet is drawn from. */
export interface SheetInput {
  units: UnitChoice;
  shade: ShadePlan;
  /** 0 lowered, 1 raised. */
  raise: number;
  /** As it is: nothing drawn deeper or further apart so that it is read with ease. For those who measure or cut by it. */
  trueScale?: boolean;
  /** No further down than the shade hangs at this height: what is raised is drawn large. */
  near?: boolean;
}

/** Sizes of words on paper, mm. */
export const NAME_MM = 3.3;
export const NOTE_MM = 2.9;
export const TAG_MM = 4;

/** Ties a primitive to a figure of the plan, where the plan has it. */
export function figureRef({ shade }: SheetInput, id: string): Ref {
  return hasFigure(shade, id) ? { figure: id } : {};
}

export function lengthFact(label: string, lengthMm: number, units: UnitChoice): Fact {
  return { label, text: lengthText(lengthMm, units) };
}

/** Where between lowered and raised, in a word for ids and in words for captions. */
export function raiseName(raise: number): { id: string; words: string } {
  if (raise <= 0) return { id: "", words: "Lowered" };
  if (raise >= 1) return { id: "-raised", words: "Raised" };
  if (Math.abs(raise - 0.5) < 1e-9) return { id: "-half", words: "Half raised" };
  return { id: "-part", words: `Raised ${Math.round(raise * 100)} % of the way` };
}
