import type { Finding } from "../figures/index.ts";
import { type Brief, type Cloth, settingPatch } from "../job/index.ts";
import type { ClothPlan, Size } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { inches, lengthText } from "../units/index.ts";
import { bandingWidthMm } from "./bands.ts";
import { clothBase } from "./judge-layer.ts";
import { bottomBandMm, isBagged } from "./make-up.ts";

/** A board deeper than this shows open ends on an outside mount. */
const DEEP_BOARD_MM = inches(2);

/** Bands, corners, returns and covers that cannot be, or not as asked. */
export function judgeTrims(
  brief: Brief,
  size: Size,
  cloth: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
): Finding[] {
  return [
    ...bandsTooLarge(brief, size),
    ...bandsOfFace(brief, size),
    ...widerThanCloth(brief, cloth, cloths),
    ...baggedUnlined(brief),
    ...mitreWithoutHem(brief),
    ...returnsInside(brief),
    ...openEnds(brief),
  ];
}

function bandsTooLarge(brief: Brief, size: Size): Finding[] {
  const { where, widthMm, insetMm, bottomBandMm: askedMm } = brief.making.banding;
  const findings: Finding[] = [];
  const room = Math.min(size.finishedWidthMm, size.finishedLengthMm) / 2;
  if (where !== "none" && (bandingWidthMm(brief, size) < widthMm - 0.5 || insetMm > room / 2)) {
    findings.push({
      ...clothBase(brief),
      id: "cloth.banding-too-wide",
      weight: "stop",
      path: `${brief.path}/shade/making/banding/widthMm`,
      text: `Banding ${lengthText(widthMm, brief.units)} wide, ${lengthText(insetMm, brief.units)} in from the edge, leaves nothing of a face ${lengthText(size.finishedWidthMm, brief.units)} by ${lengthText(size.finishedLengthMm, brief.units)}.`,
      cite: cite("geometry"),
      remedies: [{ label: "Leave the banding away", patch: settingPatch(brief, "banding", "where", "none") }],
    });
  }
  if (askedMm > bottomBandMm(brief, size.finishedLengthMm) + 0.5) {
    findings.push({
      ...clothBase(brief),
      id: "cloth.bottom-band-too-deep",
      weight: "stop",
      path: `${brief.path}/shade/making/banding/bottomBandMm`,
      text: `A bottom band ${lengthText(askedMm, brief.units)} deep is more than half of the shade, ${lengthText(size.finishedLengthMm, brief.units)}: cut that cloth as the face instead.`,
      cite: cite("our-choice"),
      remedies: [
        { label: "Leave the bottom band away", patch: settingPatch(brief, "banding", "bottomBandMm", 0) },
      ],
    });
  }
  return findings;
}

function bandsOfFace(brief: Brief, size: Size): Finding[] {
  const { where } = brief.making.banding;
  const depthMm = bottomBandMm(brief, size.finishedLengthMm);
  const banding = where !== "none" && brief.bandCloths.banding === undefined;
  const bottom =
    depthMm > 0 && brief.bandCloths.bottomBand === undefined && brief.bandCloths.banding === undefined;
  if (!banding && !bottom) return [];
  const what = banding && bottom ? "banding and bottom band" : banding ? "banding" : "bottom band";
  return [
    {
      ...clothBase(brief),
      id: "cloth.band-cloth-assumed",
      weight: "mind",
      path: `${brief.path}/shade/${banding ? "banding" : "bottomBand"}`,
      text: `No cloth is chosen for the ${what}: it is cut from the face, ${brief.cloths.face.name}.`,
      cite: cite("our-choice"),
      remedies: [],
    },
  ];
}

/** A piece that its cloth is too narrow for in every way that it may lie. */
function widerThanCloth(brief: Brief, { trims }: ClothPlan, cloths: ReadonlyMap<string, Cloth>): Finding[] {
  return trims.flatMap((trim): Finding[] => {
    const usableMm = cloths.get(trim.clothId)?.usableWidthMm ?? 0;
    const acrossMm =
      trim.grain === "weft"
        ? trim.lengthMm
        : trim.grain === "warp"
          ? trim.widthMm
          : Math.min(trim.widthMm, trim.lengthMm);
    if (acrossMm <= usableMm + 0.5) return [];
    return [
      {
        ...clothBase(brief),
        id: "cloth.trim-wider-than-cloth",
        weight: "stop",
        path: `${brief.path}/shade`,
        text: `${trim.label}: it takes ${lengthText(acrossMm, brief.units)} across the bolt, and ${trim.clothName} is ${lengthText(usableMm, brief.units)} wide.`,
        cite: cite("geometry"),
        remedies: [],
      },
    ];
  });
}

function mitreWithoutHem(brief: Brief): Finding[] {
  const { corner, sideTurnMm, bottomTurnMm } = brief.making.hems;
  const bagged = isBagged(brief);
  if (corner !== "mitred" || (!bagged && sideTurnMm > 0 && bottomTurnMm > 0)) return [];
  return [
    {
      ...clothBase(brief),
      id: "cloth.mitre-without-hem",
      weight: "mind",
      path: `${brief.path}/shade/making/hems/corner`,
      text: bagged
        ? "Bagged out, the shade has no hems to mitre: its corners are turned square."
        : "A mitred corner needs a side hem and a bottom hem: the corners are left square.",
      cite: cite("geometry"),
      remedies: [{ label: "Square corners", patch: settingPatch(brief, "hems", "corner", "square") }],
    },
  ];
}

function baggedUnlined(brief: Brief): Finding[] {
  if (brief.making.hems.makeUp !== "bagged-out" || brief.cloths.lining !== undefined) return [];
  return [
    {
      ...clothBase(brief),
      id: "cloth.bagged-unlined",
      weight: "fix",
      path: `${brief.path}/shade/making/hems/makeUp`,
      text: "A shade is bagged out with its lining, and this one has none: its hems are turned instead.",
      cite: cite("geometry"),
      remedies: [{ label: "Turn the hems", patch: settingPatch(brief, "hems", "makeUp", "turned-hems") }],
    },
  ];
}

function returnsInside(brief: Brief): Finding[] {
  if (brief.mount !== "inside" || brief.making.board.returns === "none") return [];
  return [
    {
      ...clothBase(brief),
      id: "cloth.returns-inside",
      weight: "mind",
      path: `${brief.path}/shade/making/board/returns`,
      text: "Inside the opening the ends of the board do not show: no returns are cut.",
      cite: cite("geometry"),
      remedies: [{ label: "No returns", patch: settingPatch(brief, "board", "returns", "none") }],
    },
  ];
}

function openEnds(brief: Brief): Finding[] {
  const { depthMm } = brief.board;
  if (brief.mount !== "outside" || brief.making.board.returns !== "none" || depthMm <= DEEP_BOARD_MM)
    return [];
  return [
    {
      ...clothBase(brief),
      id: "cloth.open-ends",
      weight: "mind",
      path: `${brief.path}/shade/making/board/returns`,
      text: `The face hangs off the front of the board: from the side a gap ${lengthText(depthMm, brief.units)} deep is seen at either end. Returns close it.`,
      cite: cite("board-returns"),
      remedies: [{ label: "Cover the ends", patch: settingPatch(brief, "board", "returns", "pieces") }],
    },
  ];
}
