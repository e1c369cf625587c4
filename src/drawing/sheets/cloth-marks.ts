import type { ShadePlan } from "../../plan/index.ts";
import { type ClothMark, flatSize } from "../../shade-plan/index.ts";
import type { Role } from "../model.ts";

/** How each kind of mark is drawn on the flat cloth. */
export const MARK_ROLES: Record<ClothMark["kind"], Role> = {
  pleat: "crease",
  "pleat-centre": "hidden",
  tuck: "crease",
  tape: "tape",
  gather: "gather",
  row: "fold",
  rib: "stitch",
};

/** Marks one way on the flat, hemmed face, in the order in which they are measured. */
export function marksAlong({ form }: Pick<ShadePlan, "form">, along: ClothMark["along"]): ClothMark[] {
  return form.marks.filter((mark) => mark.along === along).sort((a, b) => a.atMm - b.atMm);
}

/** Cloth of the face past the top line, for the board, mm. */
export function plannedBoardAllowanceMm({ cloth }: Pick<ShadePlan, "cloth">): number {
  const face = cloth.layers.find(({ layer }) => layer === "face");
  return face?.makeUp.find(({ label }) => label === "board")?.lengthMm ?? 0;
}

/** The face between its hems before pleats, tucks or gathers take any of it up, mm. */
export function flatFace({ size, form }: Pick<ShadePlan, "size" | "form">): {
  widthMm: number;
  lengthMm: number;
} {
  return flatSize(size, form, "face");
}
