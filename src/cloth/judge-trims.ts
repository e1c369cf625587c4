import type { Finding } from "../figures/index.ts";
import { type Cloth, settingPatch } from "../job/index.ts";
import { acrossBoltMm, type ClothPlan, type Size, trimCannotBeCut } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { inches, lengthText } from "../units/index.ts";
import { bandingWidthMm } from "./bands.ts";
import type { ClothShade } from "./cloth-input.ts";
import { clothBase } from "./judge-layer.ts";
import { bottomBandMm, isBagged } from "./make-up.ts";

/** A board deeper than this shows open ends on an outside mount. */
const DEEP_BOARD_MM = inches(2);

/** Bands, corners, returns and covers that cannot be, or not as asked. */
export function judgeTrims(
  shade: ClothShade,
  size: Size,
  cloth: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
): Finding[] {
  return [
    ...bandsTooLarge(shade, size),
    ...bandsOfFace(shade, size),
    ...widerThanCloth(shade, cloth, cloths),
    ...baggedUnlined(shade),
    ...mitreWithoutHem(shade),
    ...returnsInside(shade),
    ...openEnds(shade),
  ];
}

function bandsTooLarge(shade: ClothShade, size: Size): Finding[] {
  const { where, widthMm, insetMm, bottomBandMm: askedMm } = shade.making.banding;
  const findings: Finding[] = [];
  const room = Math.min(size.finishedWidthMm, size.finishedLengthMm) / 2;
  if (where !== "none" && (bandingWidthMm(shade, size) < widthMm - 0.5 || insetMm > room / 2)) {
    findings.push({
      ...clothBase(shade),
      id: "cloth.banding-too-wide",
      severity: "stop",
      path: `${shade.path}/shade/making/banding/widthMm`,
      text: `Banding ${lengthText(widthMm, shade.units)} wide, ${lengthText(insetMm, shade.units)} in from the edge, leaves nothing of a face ${lengthText(size.finishedWidthMm, shade.units)} by ${lengthText(size.finishedLengthMm, shade.units)}.`,
      cite: cite("geometry"),
      remedies: [{ label: "Leave the banding away", patch: settingPatch(shade, "banding", "where", "none") }],
    });
  }
  if (askedMm > bottomBandMm(shade, size.finishedLengthMm) + 0.5) {
    findings.push({
      ...clothBase(shade),
      id: "cloth.bottom-band-too-deep",
      severity: "stop",
      path: `${shade.path}/shade/making/banding/bottomBandMm`,
      text: `A bottom band ${lengthText(askedMm, shade.units)} deep is more than half of the shade, ${lengthText(size.finishedLengthMm, shade.units)}: cut that cloth as the face instead.`,
      cite: cite("our-choice"),
      remedies: [
        { label: "Leave the bottom band away", patch: settingPatch(shade, "banding", "bottomBandMm", 0) },
      ],
    });
  }
  return findings;
}

function bandsOfFace(shade: ClothShade, size: Size): Finding[] {
  const { where } = shade.making.banding;
  const depthMm = bottomBandMm(shade, size.finishedLengthMm);
  const banding = where !== "none" && shade.bandCloths.banding === undefined;
  const bottom =
    depthMm > 0 && shade.bandCloths.bottomBand === undefined && shade.bandCloths.banding === undefined;
  if (!banding && !bottom) return [];
  const what = banding && bottom ? "banding and bottom band" : banding ? "banding" : "bottom band";
  return [
    {
      ...clothBase(shade),
      id: "cloth.band-cloth-assumed",
      severity: "note",
      path: `${shade.path}/shade/${banding ? "banding" : "bottomBand"}`,
      text: `No cloth is chosen for the ${what}: it is cut from the face, ${shade.cloths.face.name}.`,
      cite: cite("our-choice"),
      remedies: [],
    },
  ];
}

/** A piece that its cloth is too narrow for in every way that it may lie. */
function widerThanCloth(
  shade: ClothShade,
  { trims }: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
): Finding[] {
  return trims.flatMap((trim): Finding[] => {
    const usableMm = cloths.get(trim.clothId)?.usableWidthMm ?? 0;
    if (!trimCannotBeCut(trim, usableMm)) return [];
    return [
      {
        ...clothBase(shade),
        id: "cloth.trim-wider-than-cloth",
        severity: "stop",
        path: `${shade.path}/shade`,
        text: `${trim.label}: it takes ${lengthText(acrossBoltMm(trim), shade.units)} across the bolt, and ${trim.clothName} is ${lengthText(usableMm, shade.units)} wide.`,
        cite: cite("geometry"),
        remedies: [],
      },
    ];
  });
}

function mitreWithoutHem(shade: ClothShade): Finding[] {
  const { corner, sideTurnMm, bottomTurnMm } = shade.making.hems;
  const bagged = isBagged(shade);
  if (corner !== "mitred" || (!bagged && sideTurnMm > 0 && bottomTurnMm > 0)) return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.mitre-without-hem",
      severity: "note",
      path: `${shade.path}/shade/making/hems/corner`,
      text: bagged
        ? "Bagged out, the shade has no hems to mitre: its corners are turned square."
        : "A mitred corner needs a side hem and a bottom hem: the corners are left square.",
      cite: cite("geometry"),
      remedies: [{ label: "Square corners", patch: settingPatch(shade, "hems", "corner", "square") }],
    },
  ];
}

function baggedUnlined(shade: ClothShade): Finding[] {
  if (shade.making.hems.makeUp !== "bagged-out" || shade.cloths.lining !== undefined) return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.bagged-unlined",
      severity: "fix",
      path: `${shade.path}/shade/making/hems/makeUp`,
      text: "A shade is bagged out with its lining, and this one has none: its hems are turned instead.",
      cite: cite("geometry"),
      remedies: [{ label: "Turn the hems", patch: settingPatch(shade, "hems", "makeUp", "turned-hems") }],
    },
  ];
}

function returnsInside(shade: ClothShade): Finding[] {
  if (shade.mount !== "inside" || shade.making.board.returns === "none") return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.returns-inside",
      severity: "note",
      path: `${shade.path}/shade/making/board/returns`,
      text: "Inside the opening the ends of the board do not show: no returns are cut.",
      cite: cite("geometry"),
      remedies: [{ label: "No returns", patch: settingPatch(shade, "board", "returns", "none") }],
    },
  ];
}

function openEnds(shade: ClothShade): Finding[] {
  const { depthMm } = shade.board;
  if (shade.mount !== "outside" || shade.making.board.returns !== "none" || depthMm <= DEEP_BOARD_MM)
    return [];
  return [
    {
      ...clothBase(shade),
      id: "cloth.open-ends",
      severity: "note",
      path: `${shade.path}/shade/making/board/returns`,
      text: `The face hangs off the front of the board: from the side a gap ${lengthText(depthMm, shade.units)} deep is seen at either end. Returns close it.`,
      cite: cite("board-returns"),
      remedies: [{ label: "Cover the ends", patch: settingPatch(shade, "board", "returns", "pieces") }],
    },
  ];
}
