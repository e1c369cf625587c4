import type { Finding, Remedy } from "../../figures/index.ts";
import { type Brief, type RibKind, settingPatch, stylePatch } from "../../job/index.ts";
import type { Grid } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";

/** What ribs do not go with, each with the reason. */
export function judgeRibs(brief: Brief, grid: Grid): Finding[] {
  const { ribs } = brief.making;
  if (ribs.kind === "none") return [noRibs(brief)];
  return [
    ...(ribs.kind === "lining-pocket" && ribs.face === "front" ? [liningPocketInFront(brief)] : []),
    ...(ribs.kind === "face-pocket" && ribs.face === "back" && brief.cloths.lining !== undefined
      ? [pocketBehindLining(brief)]
      : []),
    ...(ribs.face === "front" ? brokenPattern(brief, grid) : []),
    ...(ribs.face === "front" && brief.cloths.face.nap === true ? [napInFront(brief)] : []),
    ...facePinholes(brief),
    ...(ribs.kind === "bare" ? [] : tightPocket(brief)),
  ];
}

function base(brief: Brief, key: string) {
  return atShade(brief, `making/ribs/${key}`);
}

/** Pockets that this shade has the layers for. */
function proposedKind({ cloths }: Brief): RibKind {
  return cloths.lining === undefined ? "strip-pocket" : "lining-pocket";
}

function noRibs(brief: Brief): Finding {
  const kind = proposedKind(brief);
  const words = kind === "lining-pocket" ? "pockets of the lining" : "strips sewn on the back";
  return {
    ...base(brief, "kind"),
    id: "shape.ribbed-without-ribs",
    weight: "fix",
    text: `A ribbed shade has a rib at every row, and none are asked for: it folds as a flat one does. Take ribs in ${words}, or choose the flat style.`,
    cite: cite("pocket-spacing"),
    remedies: [
      { label: `Put ribs in ${words}`, patch: settingPatch(brief, "ribs", "kind", kind) },
      {
        label: "Make it a flat shade",
        patch: stylePatch(brief, "flat"),
      },
    ],
  };
}

function liningPocketInFront(brief: Brief): Finding {
  return {
    ...base(brief, "face"),
    id: "shape.lining-pocket-in-front",
    weight: "fix",
    text: "Pockets folded in the lining lie at the back; nothing of the lining shows at the front.",
    cite: cite("pocket-spacing"),
    remedies: [
      { label: "Put the ribs at the back", patch: settingPatch(brief, "ribs", "face", "back") },
      { label: "Fold the pockets in the face", patch: settingPatch(brief, "ribs", "kind", "face-pocket") },
    ],
  };
}

function pocketBehindLining(brief: Brief): Finding {
  return {
    ...base(brief, "kind"),
    id: "shape.pocket-behind-lining",
    weight: "mind",
    text: "A pocket folded to the back of the face alone lies between face and lining: the rings are sewn through the lining into it, and a rib can then only be changed by opening a side.",
    cite: cite("our-choice"),
    remedies: [
      {
        label: "Fold the pockets in the lining",
        patch: settingPatch(brief, "ribs", "kind", "lining-pocket"),
      },
      { label: "Fold them to the front", patch: settingPatch(brief, "ribs", "face", "front") },
    ],
  };
}

/** A batten or a tuck across a pattern cuts through every motif that a row does not miss. */
function brokenPattern(brief: Brief, grid: Grid): Finding[] {
  const { repeat } = brief.cloths.face;
  const [spacingMm] = grid.spacingsMm;
  if (repeat === undefined || spacingMm === undefined) return [];
  const times = spacingMm / repeat.verticalMm;
  const isWhole = Math.abs(times - Math.round(times)) * repeat.verticalMm < 1 && Math.round(times) > 0;
  if (isWhole && grid.spacingsMm.every((mm) => Math.abs(mm - spacingMm) < 1)) return [];
  const text = (mm: number) => lengthText(mm, brief.units);
  const takesCloth = brief.making.ribs.kind === "through-pocket" || brief.making.ribs.kind === "face-pocket";
  return [
    {
      ...base(brief, "face"),
      id: "shape.ribs-break-pattern",
      weight: takesCloth ? "fix" : "mind",
      text: `Ribs at the front stand ${text(spacingMm)} apart and the pattern repeats every ${text(repeat.verticalMm)}: ${takesCloth ? `each pocket swallows ${text(2 * brief.making.ribs.pocketMm)} of it` : "each one covers a strip of it"}, every time at another place of the motif.`,
      cite: cite("geometry", "rows that are not a whole number of repeats apart"),
      remedies: [{ label: "Put the ribs at the back", patch: settingPatch(brief, "ribs", "face", "back") }],
    },
  ];
}

function napInFront(brief: Brief): Finding {
  return {
    ...base(brief, "face"),
    id: "shape.ribs-crush-pile",
    weight: "fix",
    text: `Pockets and battens at the front crush the pile of ${brief.cloths.face.name}, and it shows.`,
    cite: cite("velvet-guide"),
    remedies: [{ label: "Put the ribs at the back", patch: settingPatch(brief, "ribs", "face", "back") }],
  };
}

/** Stitches through blackout; those of pockets through all layers are judged with the cloth. */
function facePinholes(brief: Brief): Finding[] {
  const { kind, face } = brief.making.ribs;
  if (brief.cloths.blackout === undefined || kind !== "strip-pocket" || face !== "front") return [];
  return [
    {
      ...base(brief, "kind"),
      id: "shape.rib-pinholes",
      weight: "mind",
      text: "Strips for the ribs are sewn to the face before the blackout goes behind it: needle holes in the blackout show as points of light.",
      cite: cite("blackout-guide"),
      remedies: [],
    },
  ];
}

/** Two depths of pocket go round the rib. */
function tightPocket(brief: Brief): Finding[] {
  const { pocketMm, kind } = brief.making.ribs;
  if (kind === "strip-pocket") return [];
  const { rib } = brief;
  const halfRoundMm = rib.round === true ? (Math.PI * rib.widthMm) / 2 : rib.widthMm + rib.thicknessMm;
  if (pocketMm >= halfRoundMm) return [];
  const needMm = Math.ceil(halfRoundMm + 1);
  const cure: Remedy = {
    label: `Make the pocket ${lengthText(needMm, brief.units)} deep`,
    patch: settingPatch(brief, "ribs", "pocketMm", needMm),
  };
  return [
    {
      ...base(brief, "pocketMm"),
      id: "shape.pocket-too-tight",
      weight: "stop",
      text: `${rib.name} does not go into a pocket ${lengthText(pocketMm, brief.units)} deep: half of the way around it is ${lengthText(halfRoundMm, brief.units)}.`,
      cite: cite("geometry"),
      remedies: [cure],
    },
  ];
}
