import { boardAllowanceMm } from "../job/index.ts";
import { type Form, type Layer, type LayerCut, ribCount } from "../shade-plan/index.ts";
import type { ClothShade } from "./cloth-input.ts";

/** One allowance on top of the finished size, mm. */
export interface Allowance {
  label: string;
  widthMm: number;
  lengthMm: number;
  /** Where the cloth lies: past the side edges, past the top line, past the hem line, or within the outline. */
  place: "sides" | "top" | "bottom" | "within";
}

/** Bagged out: face and lining are sewn round and turned, which an unlined shade cannot be. */
export function isBagged({ making, cloths }: ClothShade): boolean {
  return making.hems.makeUp === "bagged-out" && cloths.lining !== undefined;
}

/** Cloth of the face past its side edge and its hem line, mm: turned hems, or the seam of a bagged-out shade. */
export function hemDepthsMm(shade: ClothShade): { sideMm: number; bottomMm: number } {
  const { seamMm, sideTurnMm, sideTurns, bottomTurnMm, bottomTurns } = shade.making.hems;
  if (isBagged(shade)) return { sideMm: seamMm, bottomMm: seamMm };
  return { sideMm: sideTurnMm * sideTurns, bottomMm: bottomTurnMm * bottomTurns };
}

/** Cloth that the pockets of one layer take up along the length, mm: two depths for each. */
export function pocketTakeUpMm(shade: ClothShade, form: Form, layer: Layer): number {
  const { kind, pocketMm } = shade.making.ribs;
  const through = kind === "through-pocket";
  const inLining = kind === "lining-pocket" && layer === "lining";
  const inFace = kind === "face-pocket" && layer === "face";
  return through || inLining || inFace ? 2 * pocketMm * ribCount(form) : 0;
}

/** A band shallower than this is none. */
const LEAST_BAND_MM = 1;

/** Depth of the band that is joined to the lower edge of the face, mm; at most half of the shade. */
export function bottomBandMm(shade: ClothShade, finishedLengthMm: number): number {
  const depthMm = Math.min(shade.making.banding.bottomBandMm, finishedLengthMm / 2);
  return depthMm < LEAST_BAND_MM ? 0 : depthMm;
}

/** Cloth of one side that wraps round the end of the board, mm. */
export function wrapMm(shade: ClothShade): number {
  return shade.making.board.returns === "wrapped" && shade.mount !== "inside" ? shade.board.depthMm : 0;
}

interface Flat {
  finishedWidthMm: number;
  finishedLengthMm: number;
}

/** What each layer is cut larger by than the finished shade, in the order in which a maker adds it up. */
export function allowances(shade: ClothShade, size: Flat, form: Form, layer: Layer): Allowance[] {
  const { lining } = shade.making;
  const edges =
    layer === "face"
      ? faceEdges(shade, size)
      : layer === "lining" || lining[`${layer}Cut`] === "as-lining"
        ? liningEdges(shade)
        : innerEdges(shade, size);
  return [...styleParts(form, layer), ...edges, ...pockets(shade, form, layer)];
}

function styleParts(form: Form, layer: Layer): Allowance[] {
  return form.allowances
    .filter(({ layers }) => layers === undefined || layers.includes(layer))
    .map(({ label, widthMm, lengthMm }) => ({ label, widthMm, lengthMm, place: "within" }));
}

function pockets(shade: ClothShade, form: Form, layer: Layer): Allowance[] {
  const lengthMm = pocketTakeUpMm(shade, form, layer);
  const label = `${ribCount(form)} rib pockets`;
  return lengthMm > 0 ? [{ label, widthMm: 0, lengthMm, place: "within" }] : [];
}

function faceEdges(shade: ClothShade, size: Flat): Allowance[] {
  const { sideMm, bottomMm } = hemDepthsMm(shade);
  const bagged = isBagged(shade);
  const bandMm = bottomBandMm(shade, size.finishedLengthMm);
  const wrap = wrapMm(shade);
  const bottom: Allowance[] =
    bandMm > 0
      ? [
          { label: "less the bottom band", widthMm: 0, lengthMm: -bandMm, place: "within" },
          {
            label: "seam to the bottom band",
            widthMm: 0,
            lengthMm: shade.making.hems.seamMm,
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
    { label: "board", widthMm: 0, lengthMm: boardAllowanceMm(shade), place: "top" },
  ];
}

/** Level with the face at the top; what it is longer than that lies at the bottom. */
function liningEdges(shade: ClothShade): Allowance[] {
  const { lining, hems } = shade.making;
  const { bottomMm } = hemDepthsMm(shade);
  const boardMm = boardAllowanceMm(shade);
  const bagged = isBagged(shade);
  const widthMm = (lining.widthOverFinishedMm ?? (bagged ? 2 * hems.seamMm : 0)) + 2 * wrapMm(shade);
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
function innerEdges(shade: ClothShade, size: Flat): Allowance[] {
  const { innerNarrowerMm, innerLongerMm } = shade.making.lining;
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
export function edgesOf(shade: ClothShade, layer: Layer, added: readonly Allowance[]): LayerCut["edges"] {
  const at = (place: Allowance["place"], key: "widthMm" | "lengthMm") =>
    added.filter((one) => one.place === place).reduce((sum, one) => sum + one[key], 0);
  const sideMm = at("sides", "widthMm") / 2;
  const asLining = at("sides", "lengthMm");
  const isInner =
    (layer === "interlining" || layer === "blackout") &&
    shade.making.lining[`${layer}Cut`] === "finished-size";
  const topMm = isInner ? asLining / 2 : layer === "face" ? 0 : Math.min(asLining, boardAllowanceMm(shade));
  return {
    leftMm: sideMm,
    rightMm: sideMm,
    topMm: at("top", "lengthMm") + topMm,
    bottomMm: at("bottom", "lengthMm") + asLining - topMm,
  };
}

/** All allowances together along one way, mm. */
export function sumOf(added: readonly Allowance[], key: "widthMm" | "lengthMm"): number {
  return added.reduce((total, allowance) => total + allowance[key], 0);
}

/** Shrinkage still to come: cut = finished ÷ (1 − share). */
export function beforeShrinkingMm(lengthMm: number, share: number | undefined): number {
  return lengthMm / (1 - (share ?? 0));
}
