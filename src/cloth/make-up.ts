import type { Brief } from "../job/index.ts";
import type { Form, Layer } from "../shade/index.ts";
import { inches } from "../units/index.ts";

/** One allowance on top of the finished size, mm. */
export interface Allowance {
  label: string;
  widthMm: number;
  lengthMm: number;
}

/** Stapled cloth passes over the board and an inch beyond; hook-and-loop turns down an inch and a half. */
const STAPLE_BEYOND_MM = inches(1);
const HOOK_TURN_DOWN_MM = inches(1.5);

export function boardAllowanceMm(brief: Brief): number {
  const given = brief.making.hems.boardAllowanceMm;
  if (given !== undefined) return given;
  return brief.making.board.attachment === "staple"
    ? brief.board.depthMm + STAPLE_BEYOND_MM
    : HOOK_TURN_DOWN_MM;
}

/** Cloth that the pockets of one layer take up along the length, mm: two depths for each. */
export function pocketTakeUpMm(brief: Brief, form: Form, layer: Layer): number {
  const { kind, pocketMm } = brief.making.ribs;
  const through = kind === "through-pocket";
  const inLining = kind === "lining-pocket" && layer === "lining";
  return through || inLining ? 2 * pocketMm * form.ribs.rows.length : 0;
}

/** What each layer is cut larger by than the finished shade, in the order in which a maker adds it up. */
export function allowances(brief: Brief, form: Form, layer: Layer): Allowance[] {
  const { hems, lining } = brief.making;
  const bottomHemMm = hems.bottomTurnMm * hems.bottomTurns;
  const boardMm = boardAllowanceMm(brief);
  const takeUpMm = pocketTakeUpMm(brief, form, layer);
  const pockets: Allowance[] =
    takeUpMm > 0 ? [{ label: `${form.ribs.rows.length} rib pockets`, widthMm: 0, lengthMm: takeUpMm }] : [];
  const style = form.allowances
    .filter(({ layers }) => layers === undefined || layers.includes(layer))
    .map(({ label, widthMm, lengthMm }) => ({ label, widthMm, lengthMm }));
  switch (layer) {
    case "face":
      return [
        ...style,
        { label: "side hems", widthMm: 2 * hems.sideTurnMm * hems.sideTurns, lengthMm: 0 },
        { label: "bottom hem", widthMm: 0, lengthMm: bottomHemMm },
        { label: "board", widthMm: 0, lengthMm: boardMm },
        ...pockets,
      ];
    case "lining":
      return [
        ...style,
        {
          label: "lining over the finished size",
          widthMm: lining.widthOverFinishedMm,
          lengthMm: lining.lengthOverFinishedMm ?? bottomHemMm + boardMm,
        },
        ...pockets,
      ];
    // Interlining and blackout are cut to the finished size, no turnings (from memory).
    case "interlining":
    case "blackout":
      return [...style, ...pockets];
  }
}

/** Shrinkage still to come: cut = finished ÷ (1 − share). */
export function beforeShrinkingMm(lengthMm: number, share: number | undefined): number {
  return lengthMm / (1 - (share ?? 0));
}
