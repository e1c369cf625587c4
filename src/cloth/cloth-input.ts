import { type ReadOf, reads } from "../job/index.ts";
import type { ClothPlan, Form, Grid, Size } from "../shade-plan/index.ts";

/** What the cut of a shade's cloth reads of it. */
export const CLOTH_READS = reads({
  shade: [
    "shadeId",
    "path",
    "units",
    "mount",
    "rearCords",
    "cloths",
    "bandCloths",
    "missing",
    "faceAssumed",
    "ring",
    "board",
  ],
  making: ["hems", "lining", "ribs", "pattern", "banding", "board"],
});
/** The part of a resolved shade that `CLOTH_READS` names. */
export type ClothShade = ReadOf<typeof CLOTH_READS>;

/** What the cloth of one shade follows from. */
export interface ClothInput {
  shade: ClothShade;
  size: Size;
  grid: Grid;
  form: Form;
}

/** What the mass of a shade reads of it beside its cloth as cut. */
export const MASS_READS = reads({ shade: ["cloths", "bandCloths", "bar", "rib", "ring"] });
/** The part of a resolved shade that `MASS_READS` names. */
export type MassShade = ReadOf<typeof MASS_READS>;

/** What the mass that hangs on the cords follows from. */
export interface MassInput {
  shade: MassShade;
  grid: Grid;
  form: Form;
  cloth: ClothPlan;
}
