import type { Drive, DriveKind, LiftKindOf, Tube } from "../../job/index.ts";

export type TubeKind = LiftKindOf<"tube">;

/** The drive that each lift with a tube asks for, and the other way about. */
export const DRIVE_OF: Record<TubeKind, DriveKind> = {
  spring: "spring",
  "tube-wand": "wand",
  "tube-loop": "loop",
  motor: "motor",
};
export const LIFT_OF_DRIVE: Record<DriveKind, TubeKind> = {
  spring: "spring",
  wand: "tube-wand",
  loop: "tube-loop",
  motor: "motor",
};

/** One spool as it sits on the tube, mm. */
export interface SpoolSize {
  lengthMm: number;
  coreMm: number;
  flangeMm: number;
  /** Clear width between its flanges, where it is known. */
  windMm?: number;
}

/** Tube and drive of one shade, chosen before the folds are laid: their height decides the headrail allowance. */
export interface TubeLiftParts {
  takeUp: "tube";
  kind: TubeKind;
  tube: Tube;
  spool: SpoolSize;
  drive: Drive;
  /** Set by the maker, but made for another kind of lift. */
  asked?: Drive;
  /** Drives of this kind that come before it in the list and do not do, each with why. */
  refused: { drive: Drive; reason: string }[];
  /** Axis of the tube, and the lowest part, below the underside of the board, mm. */
  axisMm: number;
  heightMm: number;
  label: string;
}
