import type { Finding } from "../figures/index.ts";
import { type Cloth, type ResolvedShade, settingPatch } from "../job/index.ts";
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
  resolved: ResolvedShade,
  size: Size,
  cloth: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
): Finding[] {
  return [
    ...bandsTooLarge(resolved, size),
    ...bandsOfFace(resolved, size),
    ...widerThanCloth(resolved, cloth, cloths),
    ...baggedUnlined(resolved),
    ...mitreWithoutHem(resolved),
    ...returnsInside(resolved),
    ...openEnds(resolved),
  ];
}

function bandsTooLarge(resolved: ResolvedShade, size: Size): Finding[] {
  const { where, widthMm, insetMm, bottomBandMm: askedMm } = resolved.making.banding;
  const findings: Finding[] = [];
  const room = Math.min(size.finishedWidthMm, size.finishedLengthMm) / 2;
  if (where !== "none" && (bandingWidthMm(resolved, size) < widthMm - 0.5 || insetMm > room / 2)) {
    findings.push({
      ...clothBase(resolved),
      id: "cloth.banding-too-wide",
      severity: "stop",
      path: `${resolved.path}/shade/making/banding/widthMm`,
      text: `Banding ${lengthText(widthMm, resolved.units)} wide, ${lengthText(insetMm, resolved.units)} in from the edge, leaves nothing of a face ${lengthText(size.finishedWidthMm, resolved.units)} by ${lengthText(size.finishedLengthMm, resolved.units)}.`,
      cite: cite("geometry"),
      remedies: [
        { label: "Leave the banding away", patch: settingPatch(resolved, "banding", "where", "none") },
      ],
    });
  }
  if (askedMm > bottomBandMm(resolved, size.finishedLengthMm) + 0.5) {
    findings.push({
      ...clothBase(resolved),
      id: "cloth.bottom-band-too-deep",
      severity: "stop",
      path: `${resolved.path}/shade/making/banding/bottomBandMm`,
      text: `A bottom band ${lengthText(askedMm, resolved.units)} deep is more than half of the shade, ${lengthText(size.finishedLengthMm, resolved.units)}: cut that cloth as the face instead.`,
      cite: cite("our-choice"),
      remedies: [
        { label: "Leave the bottom band away", patch: settingPatch(resolved, "banding", "bottomBandMm", 0) },
      ],
    });
  }
  return findings;
}

function bandsOfFace(resolved: ResolvedShade, size: Size): Finding[] {
  const { where } = resolved.making.banding;
  const depthMm = bottomBandMm(resolved, size.finishedLengthMm);
  const banding = where !== "none" && resolved.bandCloths.banding === undefined;
  const bottom =
    depthMm > 0 && resolved.bandCloths.bottomBand === undefined && resolved.bandCloths.banding === undefined;
  if (!banding && !bottom) return [];
  const what = banding && bottom ? "banding and bottom band" : banding ? "banding" : "bottom band";
  return [
    {
      ...clothBase(resolved),
      id: "cloth.band-cloth-assumed",
      severity: "note",
      path: `${resolved.path}/shade/${banding ? "banding" : "bottomBand"}`,
      text: `No cloth is chosen for the ${what}: it is cut from the face, ${resolved.cloths.face.name}.`,
      cite: cite("our-choice"),
      remedies: [],
    },
  ];
}

/** A piece that its cloth is too narrow for in every way that it may lie. */
function widerThanCloth(
  resolved: ResolvedShade,
  { trims }: ClothPlan,
  cloths: ReadonlyMap<string, Cloth>,
): Finding[] {
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
        ...clothBase(resolved),
        id: "cloth.trim-wider-than-cloth",
        severity: "stop",
        path: `${resolved.path}/shade`,
        text: `${trim.label}: it takes ${lengthText(acrossMm, resolved.units)} across the bolt, and ${trim.clothName} is ${lengthText(usableMm, resolved.units)} wide.`,
        cite: cite("geometry"),
        remedies: [],
      },
    ];
  });
}

function mitreWithoutHem(resolved: ResolvedShade): Finding[] {
  const { corner, sideTurnMm, bottomTurnMm } = resolved.making.hems;
  const bagged = isBagged(resolved);
  if (corner !== "mitred" || (!bagged && sideTurnMm > 0 && bottomTurnMm > 0)) return [];
  return [
    {
      ...clothBase(resolved),
      id: "cloth.mitre-without-hem",
      severity: "note",
      path: `${resolved.path}/shade/making/hems/corner`,
      text: bagged
        ? "Bagged out, the shade has no hems to mitre: its corners are turned square."
        : "A mitred corner needs a side hem and a bottom hem: the corners are left square.",
      cite: cite("geometry"),
      remedies: [{ label: "Square corners", patch: settingPatch(resolved, "hems", "corner", "square") }],
    },
  ];
}

function baggedUnlined(resolved: ResolvedShade): Finding[] {
  if (resolved.making.hems.makeUp !== "bagged-out" || resolved.cloths.lining !== undefined) return [];
  return [
    {
      ...clothBase(resolved),
      id: "cloth.bagged-unlined",
      severity: "fix",
      path: `${resolved.path}/shade/making/hems/makeUp`,
      text: "A shade is bagged out with its lining, and this one has none: its hems are turned instead.",
      cite: cite("geometry"),
      remedies: [{ label: "Turn the hems", patch: settingPatch(resolved, "hems", "makeUp", "turned-hems") }],
    },
  ];
}

function returnsInside(resolved: ResolvedShade): Finding[] {
  if (resolved.mount !== "inside" || resolved.making.board.returns === "none") return [];
  return [
    {
      ...clothBase(resolved),
      id: "cloth.returns-inside",
      severity: "note",
      path: `${resolved.path}/shade/making/board/returns`,
      text: "Inside the opening the ends of the board do not show: no returns are cut.",
      cite: cite("geometry"),
      remedies: [{ label: "No returns", patch: settingPatch(resolved, "board", "returns", "none") }],
    },
  ];
}

function openEnds(resolved: ResolvedShade): Finding[] {
  const { depthMm } = resolved.board;
  if (resolved.mount !== "outside" || resolved.making.board.returns !== "none" || depthMm <= DEEP_BOARD_MM)
    return [];
  return [
    {
      ...clothBase(resolved),
      id: "cloth.open-ends",
      severity: "note",
      path: `${resolved.path}/shade/making/board/returns`,
      text: `The face hangs off the front of the board: from the side a gap ${lengthText(depthMm, resolved.units)} deep is seen at either end. Returns close it.`,
      cite: cite("board-returns"),
      remedies: [{ label: "Cover the ends", patch: settingPatch(resolved, "board", "returns", "pieces") }],
    },
  ];
}
