import type { ResolvedShade } from "../job/index.ts";
import { type Form, type Layer, type LayerCut, ribCount } from "../shade-plan/index.ts";
import { inches } from "../units/index.ts";

/** One allowance on top of the finished size, mm. */
export interface Allowance {
  label: string;
  widthMm: number;
  lengthMm: number;
  /** Where the cloth lies: past the side edges, past the top line, past the hem line, or within the outline. */
  place: "sides" | "top" | "bottom" | "within";
}

/** Stapled cloth passes over the board and an inch beyond; hook-and-loop turns down an inch and a half. */
const STAPLE_BEYOND_MM = inches(1);
const HOOK_TURN_DOWN_MM = inches(1.5);

export function boardAllowanceMm(resolved: ResolvedShade): number {
  const given = resolved.making.hems.boardAllowanceMm;
  if (given !== undefined) return given;
  return resolved.making.board.attachment === "staple"
    ? resolved.board.depthMm + STAPLE_BEYOND_MM
    : HOOK_TURN_DOWN_MM;
}

/** Bagged out: face and lining are sewn round and turned, which an unlined shade cannot be. */
export function isBagged({ making, cloths }: ResolvedShade): boolean {
  return making.hems.makeUp === "bagged-out" && cloths.lining !== undefined;
}

/** Cloth of the face past its side edge and its hem line, mm: turned hems, or the seam of a bagged-out shade. */
export function hemDepthsMm(resolved: ResolvedShade): { sideMm: number; bottomMm: number } {
  const { seamMm, sideTurnMm, sideTurns, bottomTurnMm, bottomTurns } = resolved.making.hems;
  if (isBagged(resolved)) return { sideMm: seamMm, bottomMm: seamMm };
  return { sideMm: sideTurnMm * sideTurns, bottomMm: bottomTurnMm * bottomTurns };
}

/** Cloth that the pockets of one layer take up along the length, mm: two depths for each. */
export function pocketTakeUpMm(resolved: ResolvedShade, form: Form, layer: Layer): number {
  const { kind, pocketMm } = resolved.making.ribs;
  const through = kind === "through-pocket";
  const inLining = kind === "lining-pocket" && layer === "lining";
  const inFace = kind === "face-pocket" && layer === "face";
  return through || inLining || inFace ? 2 * pocketMm * ribCount(form) : 0;
}

/** A band shallower than this is none. */
const LEAST_BAND_MM = 1;

/** Depth of the band that is joined to the lower edge of the face, mm; at most half of the shade. */
export function bottomBandMm(resolved: ResolvedShade, finishedLengthMm: number): number {
  const depthMm = Math.min(resolved.making.banding.bottomBandMm, finishedLengthMm / 2);
  return depthMm < LEAST_BAND_MM ? 0 : depthMm;
}

/** Cloth of one side that wraps round the end of the board, mm. */
export function wrapMm(resolved: ResolvedShade): number {
  return resolved.making.board.returns === "wrapped" && resolved.mount !== "inside"
    ? resolved.board.depthMm
    : 0;
}

interface Flat {
  finishedWidthMm: number;
  finishedLengthMm: number;
}

/** What each layer is cut larger by than the finished shade, in the order in which a maker adds it up. */
export function allowances(resolved: ResolvedShade, size: Flat, form: Form, layer: Layer): Allowance[] {
  const { lining } = resolved.making;
  const edges =
    layer === "face"
      ? faceEdges(resolved, size)
      : layer === "lining" || lining[`${layer}Cut`] === "as-lining"
        ? liningEdges(resolved)
        : innerEdges(resolved, size);
  return [...styleParts(form, layer), ...edges, ...pockets(resolved, form, layer)];
}

function styleParts(form: Form, layer: Layer): Allowance[] {
  return form.allowances
    .filter(({ layers }) => layers === undefined || layers.includes(layer))
    .map(({ label, widthMm, lengthMm }) => ({ label, widthMm, lengthMm, place: "within" }));
}

function pockets(resolved: ResolvedShade, form: Form, layer: Layer): Allowance[] {
  const lengthMm = pocketTakeUpMm(resolved, form, layer);
  const label = `${ribCount(form)} rib pockets`;
  return lengthMm > 0 ? [{ label, widthMm: 0, lengthMm, place: "within" }] : [];
}

function faceEdges(resolved: ResolvedShade, size: Flat): Allowance[] {
  const { sideMm, bottomMm } = hemDepthsMm(resolved);
  const bagged = isBagged(resolved);
  const bandMm = bottomBandMm(resolved, size.finishedLengthMm);
  const wrap = wrapMm(resolved);
  const bottom: Allowance[] =
    bandMm > 0
      ? [
          { label: "less the bottom band", widthMm: 0, lengthMm: -bandMm, place: "within" },
          {
            label: "seam to the bottom band",
            widthMm: 0,
            lengthMm: resolved.making.hems.seamMm,
            place: "bottom",
          },
        ]
      : [
          {
            label: bagged ? "seam at the bottom" : "bottom hem",
            widthMm: 0,
            lengthMm: bottomMm,
            place: "bottom",
          },
        ];
  return [
    { label: bagged ? "seams at the sides" : "side hems", widthMm: 2 * sideMm, lengthMm: 0, place: "sides" },
    ...(wrap > 0
      ? [{ label: "round the ends of the board", widthMm: 2 * wrap, lengthMm: 0, place: "sides" } as const]
      : []),
    ...bottom,
    { label: "board", widthMm: 0, lengthMm: boardAllowanceMm(resolved), place: "top" },
  ];
}

/** Level with the face at the top; what it is longer than that lies at the bottom. */
function liningEdges(resolved: ResolvedShade): Allowance[] {
  const { lining, hems } = resolved.making;
  const { bottomMm } = hemDepthsMm(resolved);
  const boardMm = boardAllowanceMm(resolved);
  const bagged = isBagged(resolved);
  const widthMm = (lining.widthOverFinishedMm ?? (bagged ? 2 * hems.seamMm : 0)) + 2 * wrapMm(resolved);
  const lengthMm = lining.lengthOverFinishedMm ?? bottomMm + boardMm;
  return [
    { label: "lining over the finished size", widthMm, lengthMm, place: "sides" },
    ...(lining.squaringMm > 0
      ? [
          {
            label: "spare to square it up",
            widthMm: 0,
            lengthMm: lining.squaringMm,
            place: "bottom",
          } as const,
        ]
      : []),
  ];
}

/** Cut to the finished size, no turnings (from memory), or a given measure off it. */
function innerEdges(resolved: ResolvedShade, size: Flat): Allowance[] {
  const { innerNarrowerMm, innerLongerMm } = resolved.making.lining;
  const narrower = Math.min(innerNarrowerMm, size.finishedWidthMm / 2);
  if (narrower === 0 && innerLongerMm === 0) return [];
  return [
    { label: "cut off the finished size", widthMm: -narrower, lengthMm: innerLongerMm, place: "sides" },
  ];
}

/**
 * Cloth past the finished outline at each edge, mm before shrinkage. The lining's length over the finished size
 * starts level with the face at the top.
 */
export function edgesOf(
  resolved: ResolvedShade,
  layer: Layer,
  added: readonly Allowance[],
): LayerCut["edges"] {
  const at = (place: Allowance["place"], key: "widthMm" | "lengthMm") =>
    added.filter((one) => one.place === place).reduce((sum, one) => sum + one[key], 0);
  const sideMm = at("sides", "widthMm") / 2;
  const asLining = at("sides", "lengthMm");
  const isInner =
    (layer === "interlining" || layer === "blackout") &&
    resolved.making.lining[`${layer}Cut`] === "finished-size";
  const topMm = isInner
    ? asLining / 2
    : layer === "face"
      ? 0
      : Math.min(asLining, boardAllowanceMm(resolved));
  return {
    leftMm: sideMm,
    rightMm: sideMm,
    topMm: at("top", "lengthMm") + topMm,
    bottomMm: at("bottom", "lengthMm") + asLining - topMm,
  };
}

export function sumOf(added: readonly Allowance[], key: "widthMm" | "lengthMm"): number {
  return added.reduce((total, allowance) => total + allowance[key], 0);
}

/** Shrinkage still to come: cut = finished ÷ (1 − share). */
export function beforeShrinkingMm(lengthMm: number, share: number | undefined): number {
  return lengthMm / (1 - (share ?? 0));
}
