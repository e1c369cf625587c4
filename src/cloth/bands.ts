import { boardAllowanceMm, type Cloth, colourOf, USUAL_KIND } from "../job/index.ts";
import { type Band, flatSize, type Size, type Trim } from "../shade-plan/index.ts";
import { lengthText } from "../units/index.ts";
import type { ClothInput, ClothShade } from "./cloth-input.ts";
import { seamThatFitsMm } from "./joins.ts";
import { allowances, beforeShrinkingMm, bottomBandMm, hemDepthsMm, sumOf } from "./make-up.ts";

/** The face between its hems, down to the band that is joined to it, mm. */
interface FlatFace {
  widthMm: number;
  lengthMm: number;
}

/** A piece of impossible bands still has a size. */
const LEAST_MM = 0.01;

/** The contrast banding sewn on the face, and a band of another cloth joined to its lower edge. */
export function bandsOf(input: ClothInput): { trims: Trim[]; bands: Band[] } {
  const { shade, size, form } = input;
  const flat = flatSize(size, form, "face");
  const lengthMm = flat.lengthMm - bottomBandMm(shade, size.finishedLengthMm);
  const parts = [bandingOf(shade, size, { ...flat, lengthMm }), bottomBandOf(input)];
  return { trims: parts.flatMap(({ trims }) => trims), bands: parts.flatMap(({ bands }) => bands) };
}

/** The banding’s own cloth, else the face. */
export function bandingCloth(shade: Pick<ClothShade, "cloths" | "bandCloths">): Cloth {
  return shade.bandCloths.banding ?? shade.cloths.face;
}

/** The bottom band’s own cloth, else that of the banding, else the face. */
export function bottomBandCloth(shade: Pick<ClothShade, "cloths" | "bandCloths">): Cloth {
  return shade.bandCloths.bottomBand ?? shade.bandCloths.banding ?? shade.cloths.face;
}

/** Banding that shows, mm: never wider than would leave some of the face. */
export function bandingWidthMm(shade: ClothShade, size: Size): number {
  const { widthMm } = shade.making.banding;
  const room = Math.min(size.finishedWidthMm, size.finishedLengthMm) / 2 - insetOf(shade, size);
  return Math.min(widthMm, Math.max(1, room));
}

function insetOf(shade: ClothShade, size: Size): number {
  return Math.min(shade.making.banding.insetMm, Math.min(size.finishedWidthMm, size.finishedLengthMm) / 4);
}

/** A banding of which the pattern would lie on its side if it were cut along the bolt. */
function keepsItsTop(cloth: Cloth): boolean {
  return cloth.repeat !== undefined || cloth.direction === "one-way" || cloth.nap === true;
}

/** How the banding lies: which edges it follows, and what of it goes past its own edge. */
interface Banding {
  cloth: Cloth;
  has: { sides: boolean; bottom: boolean; top: boolean };
  mitred: boolean;
  wideMm: number;
  insetMm: number;
  turnMm: number;
  /** Past the outer edge of the band: turned under, or taken into the hem with the face. */
  over: { sideMm: number; bottomMm: number; topMm: number };
  /** Where the sides end that no band across meets: at the board's cloth and in the bottom hem. */
  free: { topMm: number; bottomMm: number };
}

function layBanding(shade: ClothShade, size: Size): Banding | undefined {
  const { where, turnMm, corners } = shade.making.banding;
  if (where === "none") return undefined;
  const insetMm = insetOf(shade, size);
  const hem = hemDepthsMm(shade);
  const past = (hemMm: number) => (insetMm > 0 ? turnMm : hemMm);
  const belowMm = bottomBandMm(shade, size.finishedLengthMm) > 0 ? shade.making.hems.seamMm : hem.bottomMm;
  const boardMm = boardAllowanceMm(shade);
  return {
    cloth: bandingCloth(shade),
    has: { sides: where !== "bottom", bottom: where !== "sides", top: where === "all-round" },
    mitred: corners === "mitred",
    wideMm: bandingWidthMm(shade, size),
    insetMm,
    turnMm,
    over: { sideMm: past(hem.sideMm), bottomMm: past(belowMm), topMm: past(boardMm) },
    free: { topMm: boardMm, bottomMm: belowMm },
  };
}

function bandingOf(shade: ClothShade, size: Size, flat: FlatFace): { trims: Trim[]; bands: Band[] } {
  const banding = layBanding(shade, size);
  if (banding === undefined) return { trims: [], bands: [] };
  const lowerMm = size.finishedLengthMm - bottomBandMm(shade, size.finishedLengthMm);
  return { trims: bandingTrims(shade, banding, flat), bands: bandingBands(banding, size, lowerMm) };
}

/** Strips to cut: as long as the face is before pleats, tucks or gathers take any of it up. */
function bandingTrims(shade: ClothShade, banding: Banding, flat: FlatFace): Trim[] {
  const { cloth, has, mitred, wideMm, insetMm, turnMm, over, free } = banding;
  const why = `${lengthText(wideMm, shade.units)} shows, ${lengthText(turnMm, shade.units)} turned under`;
  const corners = mitred && has.sides && (has.bottom || has.top) ? "; corners mitred" : "";
  const edge = (into: string) =>
    `${why}${insetMm > 0 ? " along both edges" : `, the outer edge ${into}`}${corners}`;
  const sideMm =
    flat.lengthMm -
    (has.top ? insetMm - over.topMm : -free.topMm) -
    (has.bottom ? insetMm - over.bottomMm : -free.bottomMm);
  const acrossMm =
    has.sides && !mitred
      ? flat.widthMm - 2 * insetMm - 2 * wideMm + 2 * turnMm
      : flat.widthMm - 2 * (has.sides ? insetMm : 0) + 2 * over.sideMm;
  const pieces = alongOrAcross(shade, cloth, acrossMm);
  const joined = pieces.count > 1 ? `; ${pieces.count} pieces joined` : "";
  const across = (end: "bottom" | "top", overMm: number, into: string) =>
    strip(cloth, {
      id: `banding-${end}`,
      label: `Banding, ${end}`,
      widthMm: wideMm + turnMm + overMm,
      why: `${edge(into)}${joined}`,
      ...pieces,
    });
  const side = strip(cloth, {
    id: "banding-side",
    label: "Banding, side",
    count: 2,
    widthMm: wideMm + turnMm + over.sideMm,
    lengthMm: sideMm,
    grain: "warp",
    why: edge("into the side hem"),
  });
  return [
    ...(has.sides ? [side] : []),
    ...(has.bottom ? [across("bottom", over.bottomMm, "into the bottom hem")] : []),
    ...(has.top ? [across("top", over.topMm, "over the board")] : []),
  ];
}

/** Where the banding shows on the finished shade. */
function bandingBands(banding: Banding, size: Size, lowerMm: number): Band[] {
  const { cloth, has, mitred, wideMm, insetMm } = banding;
  const band = (part: Band["part"], xMm: number, yMm: number, widthMm: number, heightMm: number): Band => ({
    ...{ part, mitred, clothId: cloth.id, clothName: cloth.name, colour: bandColour(cloth) },
    ...{ xMm, yMm, widthMm, heightMm },
  });
  const fromMm = has.top ? insetMm : 0;
  const longMm = (has.bottom ? lowerMm - insetMm : lowerMm) - fromMm;
  const betweenMm = has.sides ? insetMm + (mitred ? 0 : wideMm) : 0;
  const acrossMm = size.finishedWidthMm - 2 * betweenMm;
  const rightMm = size.finishedWidthMm - insetMm - wideMm;
  return [
    ...(has.sides
      ? [band("left", insetMm, fromMm, wideMm, longMm), band("right", rightMm, fromMm, wideMm, longMm)]
      : []),
    ...(has.top ? [band("top", betweenMm, insetMm, acrossMm, wideMm)] : []),
    ...(has.bottom ? [band("bottom", betweenMm, lowerMm - insetMm - wideMm, acrossMm, wideMm)] : []),
  ];
}

function bandColour(cloth: Cloth): string {
  return colourOf(cloth, USUAL_KIND.face);
}

function bottomBandOf({ shade, size, form }: ClothInput): { trims: Trim[]; bands: Band[] } {
  const depthMm = bottomBandMm(shade, size.finishedLengthMm);
  if (depthMm === 0) return { trims: [], bands: [] };
  const cloth = bottomBandCloth(shade);
  const { seamMm } = shade.making.hems;
  const { bottomMm } = hemDepthsMm(shade);
  const faceWidthMm = size.finishedWidthMm + sumOf(allowances(shade, size, form, "face"), "widthMm");
  const pieces = alongOrAcross(shade, cloth, faceWidthMm);
  const { units } = shade;
  const why = `${lengthText(depthMm, units)} shows, ${lengthText(seamMm, units)} seam to the face, ${lengthText(bottomMm, units)} bottom hem${pieces.count > 1 ? `; ${pieces.count} pieces joined` : ""}`;
  const trim = strip(cloth, {
    id: "bottom-band",
    label: "Bottom band",
    widthMm: depthMm + seamMm + bottomMm,
    why,
    ...pieces,
  });
  return {
    trims: [trim],
    bands: [
      {
        part: "bottom-band",
        mitred: false,
        clothId: cloth.id,
        clothName: cloth.name,
        colour: bandColour(cloth),
        xMm: 0,
        yMm: size.finishedLengthMm - depthMm,
        widthMm: size.finishedWidthMm,
        heightMm: depthMm,
      },
    ],
  };
}

/**
 * A long strip that runs across the shade: across the bolt where it fits, so that its threads run as those of the face;
 * along the bolt in one piece on plain cloth; else joined, with no seam in its middle.
 */
function alongOrAcross(shade: ClothShade, cloth: Cloth, lengthMm: number) {
  const fits = beforeShrinkingMm(lengthMm, cloth.shrinkWidth) <= cloth.usableWidthMm + 1e-9;
  if (fits) return { count: 1, lengthMm, grain: "weft" as const };
  if (!keepsItsTop(cloth)) return { count: 1, lengthMm, grain: "warp" as const };
  const seamMm = seamThatFitsMm(shade.making.hems.seamMm, cloth.usableWidthMm);
  const usable = cloth.usableWidthMm * (1 - (cloth.shrinkWidth ?? 0));
  const least = Math.ceil((lengthMm - 2 * seamMm) / (usable - 2 * seamMm) - 1e-9);
  const count = least % 2 === 0 ? least + 1 : least;
  return { count, lengthMm: (lengthMm + 2 * seamMm * (count - 1)) / count, grain: "weft" as const };
}

type Strip = Pick<Trim, "id" | "label" | "count" | "widthMm" | "lengthMm" | "grain" | "why">;

/** A strip that hangs with the face, cut larger by what it still shrinks. */
function strip(cloth: Cloth, { widthMm, lengthMm, grain, ...rest }: Strip): Trim {
  const [along, across] = [cloth.shrinkLength, cloth.shrinkWidth];
  const isWarp = grain === "warp";
  return {
    ...rest,
    clothId: cloth.id,
    clothName: cloth.name,
    widthMm: beforeShrinkingMm(widthMm, isWarp ? across : along),
    lengthMm: beforeShrinkingMm(Math.max(LEAST_MM, lengthMm), isWarp ? along : across),
    grain,
    hangs: true,
  };
}
