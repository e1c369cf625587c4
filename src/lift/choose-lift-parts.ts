import type { Figure, StageResult } from "../figures/index.ts";
import { type ReadOf, reads } from "../job/index.ts";
import type { Column, Size } from "../shade-plan/index.ts";
import { chooseLock, type LockChoice } from "./lock/choose-lock.ts";
import { chooseTubeLiftParts } from "./tube/choose-tube-lift-parts.ts";
import type { TubeLiftParts } from "./tube/tube-input.ts";

/** What the choice of lock, or of tube and drive, reads of a shade. */
export const LIFT_PARTS_READS = reads({
  shade: ["units", "liftKind", "lock", "locks", "cord", "tube", "drive", "drives", "bar", "cloths"],
  making: ["lift", "board"],
});
export type LiftPartsShade = ReadOf<typeof LIFT_PARTS_READS>;

export interface LockLiftParts extends LockChoice {
  kind: "cord-lock";
  /** Lowest part below the underside of the board, mm. */
  heightMm: number;
  label: string;
}

export type LiftParts = LockLiftParts | TubeLiftParts;

/** What the choice follows from. */
export interface LiftPartsInput {
  shade: LiftPartsShade;
  size: Size;
  columns: readonly Column[];
}

/** What will take up the cords, chosen before the folds are laid: its height decides the headrail allowance. */
export function chooseLiftParts(input: LiftPartsInput): StageResult<LiftParts> {
  const chosen = (values: LiftParts, workings: readonly Figure[] = []) => ({
    values,
    workings,
    findings: [],
  });
  const { liftKind } = input.shade;
  if (liftKind !== "cord-lock") {
    const { values, workings } = chooseTubeLiftParts(input, liftKind);
    return chosen(values, workings);
  }
  const choice = chooseLock(input.shade, input.columns.length);
  return chosen({
    ...choice,
    kind: "cord-lock",
    heightMm: choice.lock.housingHeightMm,
    label: "lock height",
  });
}
