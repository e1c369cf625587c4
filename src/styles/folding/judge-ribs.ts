import type { Finding, Remedy } from "../../figures/index.ts";
import { type RibKind, settingPatch, stylePatch } from "../../job/index.ts";
import type { Grid } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../base/at-shade.ts";
import type { ShadeWith } from "../base/style-shade.ts";

type RibShade = ShadeWith<"ribs", "cloths" | "rib">;

/** What ribs do not go with, each with the reason. */
export function judgeRibs(shade: RibShade, grid: Grid): Finding[] {
  const { ribs } = shade.making;
  if (ribs.kind === "none") return [noRibs(shade)];
  return [
    ...(ribs.kind === "lining-pocket" && ribs.face === "front" ? [liningPocketInFront(shade)] : []),
    ...(ribs.kind === "face-pocket" && ribs.face === "back" && shade.cloths.lining !== undefined
      ? [pocketBehindLining(shade)]
      : []),
    ...(ribs.face === "front" ? brokenPattern(shade, grid) : []),
    ...(ribs.face === "front" && shade.cloths.face.nap === true ? [napInFront(shade)] : []),
    ...facePinholes(shade),
    ...(ribs.kind === "bare" ? [] : tightPocket(shade)),
  ];
}

function base(shade: RibShade, key: string) {
  return atShade(shade, `making/ribs/${key}`);
}

/** Pockets that this shade has the layers for. */
function proposedKind({ cloths }: RibShade): RibKind {
  return cloths.lining === undefined ? "strip-pocket" : "lining-pocket";
}

function noRibs(shade: RibShade): Finding {
  const kind = proposedKind(shade);
  const words = kind === "lining-pocket" ? "pockets of the lining" : "strips sewn on the back";
  return {
    ...base(shade, "kind"),
    id: "shape.ribbed-without-ribs",
    severity: "fix",
    text: `A ribbed shade has a rib at every row, and none are asked for: it folds as a flat one does. Take ribs in ${words}, or choose the flat style.`,
    cite: cite("pocket-spacing"),
    remedies: [
      { label: `Put ribs in ${words}`, patch: settingPatch(shade, "ribs", "kind", kind) },
      {
        label: "Make it a flat shade",
        patch: stylePatch(shade, "flat"),
      },
    ],
  };
}

function liningPocketInFront(shade: RibShade): Finding {
  return {
    ...base(shade, "face"),
    id: "shape.lining-pocket-in-front",
    severity: "fix",
    text: "Pockets folded in the lining lie at the back; nothing of the lining shows at the front.",
    cite: cite("pocket-spacing"),
    remedies: [
      { label: "Put the ribs at the back", patch: settingPatch(shade, "ribs", "face", "back") },
      { label: "Fold the pockets in the face", patch: settingPatch(shade, "ribs", "kind", "face-pocket") },
    ],
  };
}

function pocketBehindLining(shade: RibShade): Finding {
  return {
    ...base(shade, "kind"),
    id: "shape.pocket-behind-lining",
    severity: "note",
    text: "A pocket folded to the back of the face alone lies between face and lining: the rings are sewn through the lining into it, and a rib can then only be changed by opening a side.",
    cite: cite("our-choice"),
    remedies: [
      {
        label: "Fold the pockets in the lining",
        patch: settingPatch(shade, "ribs", "kind", "lining-pocket"),
      },
      { label: "Fold them to the front", patch: settingPatch(shade, "ribs", "face", "front") },
    ],
  };
}

/** A batten or a tuck across a pattern cuts through every motif that a row does not miss. */
function brokenPattern(shade: RibShade, grid: Grid): Finding[] {
  const { repeat } = shade.cloths.face;
  const [spacingMm] = grid.spacingsMm;
  if (repeat === undefined || spacingMm === undefined) return [];
  const times = spacingMm / repeat.verticalMm;
  const isWhole = Math.abs(times - Math.round(times)) * repeat.verticalMm < 1 && Math.round(times) > 0;
  if (isWhole && grid.spacingsMm.every((mm) => Math.abs(mm - spacingMm) < 1)) return [];
  const text = (mm: number) => lengthText(mm, shade.units);
  const takesCloth = shade.making.ribs.kind === "through-pocket" || shade.making.ribs.kind === "face-pocket";
  return [
    {
      ...base(shade, "face"),
      id: "shape.ribs-break-pattern",
      severity: takesCloth ? "fix" : "note",
      text: `Ribs at the front stand ${text(spacingMm)} apart and the pattern repeats every ${text(repeat.verticalMm)}: ${takesCloth ? `each pocket swallows ${text(2 * shade.making.ribs.pocketMm)} of it` : "each one covers a strip of it"}, every time at another place of the motif.`,
      cite: cite("geometry", "rows that are not a whole number of repeats apart"),
      remedies: [{ label: "Put the ribs at the back", patch: settingPatch(shade, "ribs", "face", "back") }],
    },
  ];
}

function napInFront(shade: RibShade): Finding {
  return {
    ...base(shade, "face"),
    id: "shape.ribs-crush-pile",
    severity: "fix",
    text: `Pockets and battens at the front crush the pile of ${shade.cloths.face.name}, and it shows.`,
    cite: cite("velvet-guide"),
    remedies: [{ label: "Put the ribs at the back", patch: settingPatch(shade, "ribs", "face", "back") }],
  };
}

/** Stitches through blackout; those of pockets through all layers are judged with the cloth. */
function facePinholes(shade: RibShade): Finding[] {
  const { kind, face } = shade.making.ribs;
  if (shade.cloths.blackout === undefined || kind !== "strip-pocket" || face !== "front") return [];
  return [
    {
      ...base(shade, "kind"),
      id: "shape.rib-pinholes",
      severity: "note",
      text: "Strips for the ribs are sewn to the face before the blackout goes behind it: needle holes in the blackout show as points of light.",
      cite: cite("blackout-guide"),
      remedies: [],
    },
  ];
}

/** Two depths of pocket go round the rib. */
function tightPocket(shade: RibShade): Finding[] {
  const { pocketMm, kind } = shade.making.ribs;
  if (kind === "strip-pocket") return [];
  const { rib } = shade;
  const halfRoundMm = rib.round === true ? (Math.PI * rib.widthMm) / 2 : rib.widthMm + rib.thicknessMm;
  if (pocketMm >= halfRoundMm) return [];
  const needMm = Math.ceil(halfRoundMm + 1);
  const cure: Remedy = {
    label: `Make the pocket ${lengthText(needMm, shade.units)} deep`,
    patch: settingPatch(shade, "ribs", "pocketMm", needMm),
  };
  return [
    {
      ...base(shade, "pocketMm"),
      id: "shape.pocket-too-tight",
      severity: "stop",
      text: `${rib.name} does not go into a pocket ${lengthText(pocketMm, shade.units)} deep: half of the way around it is ${lengthText(halfRoundMm, shade.units)}.`,
      cite: cite("geometry"),
      remedies: [cure],
    },
  ];
}
