import type { Finding, Remedy } from "../../figures/index.ts";
import { type ResolvedShade, type RibKind, settingPatch, stylePatch } from "../../job/index.ts";
import type { Grid } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";

/** What ribs do not go with, each with the reason. */
export function judgeRibs(resolved: ResolvedShade, grid: Grid): Finding[] {
  const { ribs } = resolved.making;
  if (ribs.kind === "none") return [noRibs(resolved)];
  return [
    ...(ribs.kind === "lining-pocket" && ribs.face === "front" ? [liningPocketInFront(resolved)] : []),
    ...(ribs.kind === "face-pocket" && ribs.face === "back" && resolved.cloths.lining !== undefined
      ? [pocketBehindLining(resolved)]
      : []),
    ...(ribs.face === "front" ? brokenPattern(resolved, grid) : []),
    ...(ribs.face === "front" && resolved.cloths.face.nap === true ? [napInFront(resolved)] : []),
    ...facePinholes(resolved),
    ...(ribs.kind === "bare" ? [] : tightPocket(resolved)),
  ];
}

function base(resolved: ResolvedShade, key: string) {
  return atShade(resolved, `making/ribs/${key}`);
}

/** Pockets that this shade has the layers for. */
function proposedKind({ cloths }: ResolvedShade): RibKind {
  return cloths.lining === undefined ? "strip-pocket" : "lining-pocket";
}

function noRibs(resolved: ResolvedShade): Finding {
  const kind = proposedKind(resolved);
  const words = kind === "lining-pocket" ? "pockets of the lining" : "strips sewn on the back";
  return {
    ...base(resolved, "kind"),
    id: "shape.ribbed-without-ribs",
    severity: "fix",
    text: `A ribbed shade has a rib at every row, and none are asked for: it folds as a flat one does. Take ribs in ${words}, or choose the flat style.`,
    cite: cite("pocket-spacing"),
    remedies: [
      { label: `Put ribs in ${words}`, patch: settingPatch(resolved, "ribs", "kind", kind) },
      {
        label: "Make it a flat shade",
        patch: stylePatch(resolved, "flat"),
      },
    ],
  };
}

function liningPocketInFront(resolved: ResolvedShade): Finding {
  return {
    ...base(resolved, "face"),
    id: "shape.lining-pocket-in-front",
    severity: "fix",
    text: "Pockets folded in the lining lie at the back; nothing of the lining shows at the front.",
    cite: cite("pocket-spacing"),
    remedies: [
      { label: "Put the ribs at the back", patch: settingPatch(resolved, "ribs", "face", "back") },
      { label: "Fold the pockets in the face", patch: settingPatch(resolved, "ribs", "kind", "face-pocket") },
    ],
  };
}

function pocketBehindLining(resolved: ResolvedShade): Finding {
  return {
    ...base(resolved, "kind"),
    id: "shape.pocket-behind-lining",
    severity: "note",
    text: "A pocket folded to the back of the face alone lies between face and lining: the rings are sewn through the lining into it, and a rib can then only be changed by opening a side.",
    cite: cite("our-choice"),
    remedies: [
      {
        label: "Fold the pockets in the lining",
        patch: settingPatch(resolved, "ribs", "kind", "lining-pocket"),
      },
      { label: "Fold them to the front", patch: settingPatch(resolved, "ribs", "face", "front") },
    ],
  };
}

/** A batten or a tuck across a pattern cuts through every motif that a row does not miss. */
function brokenPattern(resolved: ResolvedShade, grid: Grid): Finding[] {
  const { repeat } = resolved.cloths.face;
  const [spacingMm] = grid.spacingsMm;
  if (repeat === undefined || spacingMm === undefined) return [];
  const times = spacingMm / repeat.verticalMm;
  const isWhole = Math.abs(times - Math.round(times)) * repeat.verticalMm < 1 && Math.round(times) > 0;
  if (isWhole && grid.spacingsMm.every((mm) => Math.abs(mm - spacingMm) < 1)) return [];
  const text = (mm: number) => lengthText(mm, resolved.units);
  const takesCloth =
    resolved.making.ribs.kind === "through-pocket" || resolved.making.ribs.kind === "face-pocket";
  return [
    {
      ...base(resolved, "face"),
      id: "shape.ribs-break-pattern",
      severity: takesCloth ? "fix" : "note",
      text: `Ribs at the front stand ${text(spacingMm)} apart and the pattern repeats every ${text(repeat.verticalMm)}: ${takesCloth ? `each pocket swallows ${text(2 * resolved.making.ribs.pocketMm)} of it` : "each one covers a strip of it"}, every time at another place of the motif.`,
      cite: cite("geometry", "rows that are not a whole number of repeats apart"),
      remedies: [
        { label: "Put the ribs at the back", patch: settingPatch(resolved, "ribs", "face", "back") },
      ],
    },
  ];
}

function napInFront(resolved: ResolvedShade): Finding {
  return {
    ...base(resolved, "face"),
    id: "shape.ribs-crush-pile",
    severity: "fix",
    text: `Pockets and battens at the front crush the pile of ${resolved.cloths.face.name}, and it shows.`,
    cite: cite("velvet-guide"),
    remedies: [{ label: "Put the ribs at the back", patch: settingPatch(resolved, "ribs", "face", "back") }],
  };
}

/** Stitches through blackout; those of pockets through all layers are judged with the cloth. */
function facePinholes(resolved: ResolvedShade): Finding[] {
  const { kind, face } = resolved.making.ribs;
  if (resolved.cloths.blackout === undefined || kind !== "strip-pocket" || face !== "front") return [];
  return [
    {
      ...base(resolved, "kind"),
      id: "shape.rib-pinholes",
      severity: "note",
      text: "Strips for the ribs are sewn to the face before the blackout goes behind it: needle holes in the blackout show as points of light.",
      cite: cite("blackout-guide"),
      remedies: [],
    },
  ];
}

/** Two depths of pocket go round the rib. */
function tightPocket(resolved: ResolvedShade): Finding[] {
  const { pocketMm, kind } = resolved.making.ribs;
  if (kind === "strip-pocket") return [];
  const { rib } = resolved;
  const halfRoundMm = rib.round === true ? (Math.PI * rib.widthMm) / 2 : rib.widthMm + rib.thicknessMm;
  if (pocketMm >= halfRoundMm) return [];
  const needMm = Math.ceil(halfRoundMm + 1);
  const cure: Remedy = {
    label: `Make the pocket ${lengthText(needMm, resolved.units)} deep`,
    patch: settingPatch(resolved, "ribs", "pocketMm", needMm),
  };
  return [
    {
      ...base(resolved, "pocketMm"),
      id: "shape.pocket-too-tight",
      severity: "stop",
      text: `${rib.name} does not go into a pocket ${lengthText(pocketMm, resolved.units)} deep: half of the way around it is ${lengthText(halfRoundMm, resolved.units)}.`,
      cite: cite("geometry"),
      remedies: [cure],
    },
  ];
}
