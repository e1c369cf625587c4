import type { Finding, Remedy } from "../../figures/index.ts";
import {
  leaveOutPatch,
  type ResolvedShade,
  type StyleKind,
  settingPatch,
  stylePatch,
} from "../../job/index.ts";
import type { Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches, lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";
import { scallopOfSag } from "../gathering/scallop.ts";
import { type Dip, USUAL_DIP_SHARE } from "./dip.ts";

/** Widths that a dip still holds well, and beyond which it does not: recalled, no source found. */
export const HOLDS_WELL = sourced(inches(40), "mm", cite("from-memory", "up to about 40 in"));
export const HOLDS_NO_MORE = sourced(inches(48), "mm", cite("from-memory", "hardly over 48 in"));
/** A shallower dip draws the columns together with more than about twice the weight of the lower edge. */
const SHALLOW_SHARE = sourced(1 / 16, "ratio", cite("our-choice"));

export function judgeRelaxed(resolved: ResolvedShade, size: Size, dip: Dip): Finding[] {
  return [
    ...tooWide(resolved, size),
    ...ribs(resolved),
    ...bar(resolved),
    ...columns(resolved),
    ...stiff(resolved),
    ...depth(resolved, size, dip),
    ...both(resolved, dip),
  ];
}

function styleRemedy(resolved: ResolvedShade, style: StyleKind, label: string): Remedy {
  return { label, patch: stylePatch(resolved, style) };
}

function tooWide(resolved: ResolvedShade, { finishedWidthMm: width }: Size): Finding[] {
  if (width <= HOLDS_WELL.value) return [];
  const over = width > HOLDS_NO_MORE.value;
  const limit = over ? HOLDS_NO_MORE : HOLDS_WELL;
  return [
    {
      ...atShade(resolved, "style"),
      id: "shape.relaxed-too-wide",
      severity: over ? "fix" : "note",
      text: `${lengthText(width, resolved.units)} is wide for a relaxed shade: nothing carries it between the two columns, and over ${lengthText(limit.value, resolved.units)} the dip ${over ? "no longer holds and the folds hang down in the middle" : "begins to sag unevenly"}. With lines in the middle it becomes a balloon, with its columns set in a tailed shade.`,
      cite: limit.cite,
      remedies: [
        styleRemedy(resolved, "pleated-balloon", "Make it a pleated balloon"),
        styleRemedy(resolved, "tailed", "Make it a tailed shade"),
      ],
    },
  ];
}

function ribs(resolved: ResolvedShade): Finding[] {
  if (resolved.making.ribs.kind === "none") return [];
  return [
    {
      ...atShade(resolved, "making/ribs/kind"),
      id: "shape.relaxed-ribs",
      severity: "fix",
      text: "A rib across would hold the folds straight, and a relaxed shade is there to dip. The ribs are left out.",
      cite: cite("relaxed-notes", "no ribs"),
      remedies: [
        { label: "Ask for no ribs", patch: settingPatch(resolved, "ribs", "kind", "none") },
        styleRemedy(resolved, "ribbed", "Make it a ribbed shade"),
      ],
    },
  ];
}

function bar(resolved: ResolvedShade): Finding[] {
  if (resolved.making.relax.weight !== "bar") return [];
  return [
    {
      ...atShade(resolved, "making/relax/weight"),
      id: "shape.relaxed-bar",
      severity: "fix",
      text: "A bar along the hem keeps it straight: only the folds above it dip, and the extra width puckers over it.",
      cite: cite("relaxed-notes"),
      remedies: [
        {
          label: "Put short weights at the columns",
          patch: settingPatch(resolved, "relax", "weight", "at-columns"),
        },
        styleRemedy(resolved, "flat", "Make it a flat shade"),
      ],
    },
  ];
}

function columns(resolved: ResolvedShade): Finding[] {
  const { count } = resolved.making.columns;
  if (count === undefined || count <= 2) return [];
  return [
    {
      ...atShade(resolved, "making/columns/count"),
      id: "shape.relaxed-columns",
      severity: "fix",
      text: `${count} columns were asked for; a relaxed shade has two. A line in the middle would carry what is to dip, so the others are left out.`,
      cite: cite("relaxed-notes", "outer columns alone"),
      remedies: [
        { label: "Use 2 columns", patch: settingPatch(resolved, "columns", "count", 2) },
        styleRemedy(resolved, "pleated-balloon", "Make it a pleated balloon"),
      ],
    },
  ];
}

function stiff(resolved: ResolvedShade): Finding[] {
  return (["interlining", "blackout"] as const).flatMap((layer): Finding[] => {
    const cloth = resolved.cloths[layer];
    if (cloth === undefined) return [];
    return [
      {
        ...atShade(resolved, layer),
        id: `shape.relaxed-${layer}`,
        severity: layer === "interlining" ? "fix" : "note",
        text: `With ${cloth.name} between face and lining the shade is stiff: its folds break in corners instead of hanging in a curve.`,
        cite: cite("from-memory"),
        remedies: [
          {
            label: `Leave the ${layer} out`,
            patch: leaveOutPatch(resolved, layer),
          },
        ],
      },
    ];
  });
}

function depth(resolved: ResolvedShade, { finishedLengthMm }: Size, dip: Dip): Finding[] {
  const usualMm = Math.min(USUAL_DIP_SHARE.value * dip.spanMm, finishedLengthMm / 4);
  const remedies: Remedy[] = [
    {
      label: `Let it dip by ${lengthText(usualMm, resolved.units)}`,
      patch: settingPatch(resolved, "relax", "dipMm", usualMm),
    },
  ];
  if (dip.tooDeep) {
    return [
      {
        ...atShade(resolved, "making/relax/dipMm"),
        id: "shape.relaxed-dip-too-deep",
        severity: "fix",
        text: `The dip that was asked for is more than a third of the length; ${lengthText(dip.dipMm, resolved.units)} is planned.`,
        cite: cite("our-choice"),
        remedies,
      },
    ];
  }
  if (dip.dipMm >= SHALLOW_SHARE.value * dip.spanMm - 1e-6) return [];
  const { parameterMm, arcMm } = scallopOfSag(dip.spanMm, dip.dipMm);
  const pull =
    parameterMm === undefined
      ? "It does not dip at all: the lower edge hangs straight between the columns."
      : `So shallow an edge draws the columns together with ${(parameterMm / arcMm).toFixed(1)} times its own weight.`;
  return [
    {
      ...atShade(resolved, "making/relax/dipMm"),
      id: "shape.relaxed-dip-shallow",
      severity: "note",
      text: `The lower edge dips by ${lengthText(dip.dipMm, resolved.units)} over ${lengthText(dip.spanMm, resolved.units)}. ${pull}`,
      cite: cite("catenary", "pull along the lowest point over the weight of the cord"),
      remedies,
    },
  ];
}

function both(resolved: ResolvedShade, dip: Dip): Finding[] {
  if (!dip.disagrees) return [];
  const asked = resolved.making.relax.extraWidthMm ?? 0;
  return [
    {
      ...atShade(resolved, "making/relax/extraWidthMm"),
      id: "shape.relaxed-dip-and-width",
      severity: "note",
      text: `Dip and extra width are both fixed and do not agree: a dip of ${lengthText(dip.dipMm, resolved.units)} takes ${lengthText(dip.extraMm, resolved.units)}, not ${lengthText(asked, resolved.units)}. The dip is kept.`,
      cite: cite("catenary"),
      remedies: [
        {
          label: `Set the extra width to ${lengthText(dip.extraMm, resolved.units)}`,
          patch: settingPatch(resolved, "relax", "extraWidthMm", dip.extraMm),
        },
      ],
    },
  ];
}
