import type { Brief, Cloth } from "../job/index.ts";
import type { Band, Size, Trim } from "../shade/index.ts";
import { lengthText } from "../units/index.ts";
import type { BareCut } from "./cut-layer.ts";
import { seamThatFitsMm } from "./joins.ts";
import { beforeShrinkingMm, boardAllowanceMm, bottomBandMm, hemDepthsMm } from "./make-up.ts";

/** The contrast banding sewn on the face, and a band of another cloth joined to its lower edge. */
export function bandsOf(brief: Brief, size: Size, face: BareCut): { trims: Trim[]; bands: Band[] } {
  const parts = [bandingOf(brief, size), bottomBandOf(brief, size, face)];
  return { trims: parts.flatMap(({ trims }) => trims), bands: parts.flatMap(({ bands }) => bands) };
}

export function bandingCloth(brief: Brief): Cloth {
  return brief.bandCloths.banding ?? brief.cloths.face;
}

export function bottomBandCloth(brief: Brief): Cloth {
  return brief.bandCloths.bottomBand ?? brief.bandCloths.banding ?? brief.cloths.face;
}

/** Banding that shows, mm: never wider than would leave some of the face. */
export function bandingWidthMm(brief: Brief, size: Size): number {
  const { widthMm } = brief.making.banding;
  const room = Math.min(size.finishedWidthMm, size.finishedLengthMm) / 2 - insetOf(brief, size);
  return Math.min(widthMm, Math.max(1, room));
}

function insetOf(brief: Brief, size: Size): number {
  return Math.min(brief.making.banding.insetMm, Math.min(size.finishedWidthMm, size.finishedLengthMm) / 4);
}

/** A banding of which the pattern would lie on its side if it were cut along the bolt. */
function keepsItsTop(cloth: Cloth): boolean {
  return cloth.repeat !== undefined || cloth.direction === "one-way" || cloth.nap === true;
}

function bandingOf(brief: Brief, size: Size): { trims: Trim[]; bands: Band[] } {
  const { where, turnMm, corners } = brief.making.banding;
  if (where === "none") return { trims: [], bands: [] };
  const cloth = bandingCloth(brief);
  const [W, L] = [size.finishedWidthMm, size.finishedLengthMm - bottomBandMm(brief, size.finishedLengthMm)];
  const wide = bandingWidthMm(brief, size);
  const inset = insetOf(brief, size);
  const hem = hemDepthsMm(brief);
  const has = {
    sides: where !== "bottom",
    bottom: where !== "sides",
    top: where === "all-round",
  };
  const mitred = corners === "mitred";
  // Past the edge of the band: turned under, or taken into the hem with the face.
  const past = (hemMm: number) => (inset > 0 ? turnMm : hemMm);
  const belowMm = bottomBandMm(brief, size.finishedLengthMm) > 0 ? brief.making.hems.seamMm : hem.bottomMm;
  const over = {
    side: past(hem.sideMm),
    bottom: past(belowMm),
    top: past(boardAllowanceMm(brief)),
  };
  const sidesFrom = has.top ? inset : 0;
  const sidesTo = has.bottom ? L - inset : L;
  const sideLength =
    sidesTo -
    sidesFrom +
    (has.top ? over.top : boardAllowanceMm(brief)) +
    (has.bottom ? over.bottom : belowMm);
  const acrossLength =
    has.sides && !mitred
      ? W - 2 * inset - 2 * wide + 2 * turnMm
      : W - 2 * (has.sides ? inset : 0) + 2 * over.side;
  const shows = lengthText(wide, brief.units);
  const why = `${shows} shows, ${lengthText(turnMm, brief.units)} turned under`;
  const into = (into: string) => (inset > 0 ? `${why} along both edges` : `${why}, the outer edge ${into}`);
  const ends = mitred && has.sides && (has.bottom || has.top) ? "; corners mitred" : "";
  const trims: Trim[] = [];
  if (has.sides) {
    trims.push(
      strip(
        cloth,
        "banding-side",
        "Banding, side",
        2,
        wide + turnMm + over.side,
        sideLength,
        "warp",
        `${into("into the side hem")}${ends}`,
      ),
    );
  }
  const across = (id: string, label: string, overMm: number, reason: string) => {
    const pieces = alongOrAcross(brief, cloth, acrossLength);
    trims.push(
      strip(
        cloth,
        id,
        label,
        pieces.count,
        wide + turnMm + overMm,
        pieces.lengthMm,
        pieces.grain,
        `${reason}${ends}${pieces.count > 1 ? `; ${pieces.count} pieces joined` : ""}`,
      ),
    );
  };
  if (has.bottom) across("banding-bottom", "Banding, bottom", over.bottom, into("into the bottom hem"));
  if (has.top) across("banding-top", "Banding, top", over.top, into("over the board"));
  const band = (part: Band["part"], xMm: number, yMm: number, widthMm: number, heightMm: number): Band => ({
    part,
    mitred,
    clothId: cloth.id,
    clothName: cloth.name,
    xMm,
    yMm,
    widthMm,
    heightMm,
  });
  const acrossFrom = has.sides ? inset + (mitred ? 0 : wide) : 0;
  const bands = [
    ...(has.sides
      ? [
          band("left", inset, sidesFrom, wide, sidesTo - sidesFrom),
          band("right", W - inset - wide, sidesFrom, wide, sidesTo - sidesFrom),
        ]
      : []),
    ...(has.top ? [band("top", acrossFrom, inset, W - 2 * acrossFrom, wide)] : []),
    ...(has.bottom ? [band("bottom", acrossFrom, L - inset - wide, W - 2 * acrossFrom, wide)] : []),
  ];
  return { trims, bands };
}

function bottomBandOf(brief: Brief, size: Size, face: BareCut): { trims: Trim[]; bands: Band[] } {
  const depthMm = bottomBandMm(brief, size.finishedLengthMm);
  if (depthMm === 0) return { trims: [], bands: [] };
  const cloth = bottomBandCloth(brief);
  const { seamMm } = brief.making.hems;
  const { bottomMm } = hemDepthsMm(brief);
  const flatWidthMm = face.makeUp
    .filter(({ label }) => label !== "shrinkage")
    .reduce((sum, part) => sum + part.widthMm, 0);
  const pieces = alongOrAcross(brief, cloth, flatWidthMm);
  const { units } = brief;
  const why = `${lengthText(depthMm, units)} shows, ${lengthText(seamMm, units)} seam to the face, ${lengthText(bottomMm, units)} bottom hem${pieces.count > 1 ? `; ${pieces.count} pieces joined` : ""}`;
  const trim = strip(
    cloth,
    "bottom-band",
    "Bottom band",
    pieces.count,
    depthMm + seamMm + bottomMm,
    pieces.lengthMm,
    pieces.grain,
    why,
  );
  return {
    trims: [trim],
    bands: [
      {
        part: "bottom-band",
        mitred: false,
        clothId: cloth.id,
        clothName: cloth.name,
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
function alongOrAcross(brief: Brief, cloth: Cloth, lengthMm: number) {
  const fits = beforeShrinkingMm(lengthMm, cloth.shrinkWidth) <= cloth.usableWidthMm + 1e-9;
  if (fits) return { count: 1, lengthMm, grain: "weft" as const };
  if (!keepsItsTop(cloth)) return { count: 1, lengthMm, grain: "warp" as const };
  const seamMm = seamThatFitsMm(brief.making.hems.seamMm, cloth.usableWidthMm);
  const usable = cloth.usableWidthMm * (1 - (cloth.shrinkWidth ?? 0));
  const least = Math.ceil((lengthMm - 2 * seamMm) / (usable - 2 * seamMm) - 1e-9);
  const count = least % 2 === 0 ? least + 1 : least;
  return { count, lengthMm: (lengthMm + 2 * seamMm * (count - 1)) / count, grain: "weft" as const };
}

function strip(
  cloth: Cloth,
  id: string,
  label: string,
  count: number,
  widthMm: number,
  lengthMm: number,
  grain: "warp" | "weft",
  why: string,
): Trim {
  const [along, across] = [cloth.shrinkLength, cloth.shrinkWidth];
  return {
    id,
    label,
    clothId: cloth.id,
    clothName: cloth.name,
    count,
    widthMm: beforeShrinkingMm(widthMm, grain === "warp" ? across : along),
    lengthMm: beforeShrinkingMm(Math.max(0.01, lengthMm), grain === "warp" ? along : across),
    grain,
    why,
    hangs: true,
  };
}
