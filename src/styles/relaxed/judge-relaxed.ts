import type { Finding, Remedy } from "../../figures/index.ts";
import { type Brief, leaveOutPatch, type StyleKind, settingPatch, stylePatch } from "../../job/index.ts";
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

export function judgeRelaxed(brief: Brief, size: Size, dip: Dip): Finding[] {
  return [
    ...tooWide(brief, size),
    ...ribs(brief),
    ...bar(brief),
    ...columns(brief),
    ...stiff(brief),
    ...depth(brief, size, dip),
    ...both(brief, dip),
  ];
}

function styleRemedy(brief: Brief, style: StyleKind, label: string): Remedy {
  return { label, patch: stylePatch(brief, style) };
}

function tooWide(brief: Brief, { finishedWidthMm: width }: Size): Finding[] {
  if (width <= HOLDS_WELL.value) return [];
  const over = width > HOLDS_NO_MORE.value;
  const limit = over ? HOLDS_NO_MORE : HOLDS_WELL;
  return [
    {
      ...atShade(brief, "style"),
      id: "shape.relaxed-too-wide",
      weight: over ? "fix" : "mind",
      text: `${lengthText(width, brief.units)} is wide for a relaxed shade: nothing carries it between the two columns, and over ${lengthText(limit.value, brief.units)} the dip ${over ? "no longer holds and the folds hang down in the middle" : "begins to sag unevenly"}. With lines in the middle it becomes a balloon, with its columns set in a tailed shade.`,
      cite: limit.cite,
      remedies: [
        styleRemedy(brief, "pleated-balloon", "Make it a pleated balloon"),
        styleRemedy(brief, "tailed", "Make it a tailed shade"),
      ],
    },
  ];
}

function ribs(brief: Brief): Finding[] {
  if (brief.making.ribs.kind === "none") return [];
  return [
    {
      ...atShade(brief, "making/ribs/kind"),
      id: "shape.relaxed-ribs",
      weight: "fix",
      text: "A rib across would hold the folds straight, and a relaxed shade is there to dip. The ribs are left out.",
      cite: cite("relaxed-notes", "no ribs"),
      remedies: [
        { label: "Ask for no ribs", patch: settingPatch(brief, "ribs", "kind", "none") },
        styleRemedy(brief, "ribbed", "Make it a ribbed shade"),
      ],
    },
  ];
}

function bar(brief: Brief): Finding[] {
  if (brief.making.relax.weight !== "bar") return [];
  return [
    {
      ...atShade(brief, "making/relax/weight"),
      id: "shape.relaxed-bar",
      weight: "fix",
      text: "A bar along the hem keeps it straight: only the folds above it dip, and the extra width puckers over it.",
      cite: cite("relaxed-notes"),
      remedies: [
        {
          label: "Put short weights at the columns",
          patch: settingPatch(brief, "relax", "weight", "at-columns"),
        },
        styleRemedy(brief, "flat", "Make it a flat shade"),
      ],
    },
  ];
}

function columns(brief: Brief): Finding[] {
  const { count } = brief.making.columns;
  if (count === undefined || count <= 2) return [];
  return [
    {
      ...atShade(brief, "making/columns/count"),
      id: "shape.relaxed-columns",
      weight: "fix",
      text: `${count} columns were asked for; a relaxed shade has two. A line in the middle would carry what is to dip, so the others are left out.`,
      cite: cite("relaxed-notes", "outer columns alone"),
      remedies: [
        { label: "Use 2 columns", patch: settingPatch(brief, "columns", "count", 2) },
        styleRemedy(brief, "pleated-balloon", "Make it a pleated balloon"),
      ],
    },
  ];
}

function stiff(brief: Brief): Finding[] {
  return (["interlining", "blackout"] as const).flatMap((layer): Finding[] => {
    const cloth = brief.cloths[layer];
    if (cloth === undefined) return [];
    return [
      {
        ...atShade(brief, layer),
        id: `shape.relaxed-${layer}`,
        weight: layer === "interlining" ? "fix" : "mind",
        text: `With ${cloth.name} between face and lining the shade is stiff: its folds break in corners instead of hanging in a curve.`,
        cite: cite("from-memory"),
        remedies: [
          {
            label: `Leave the ${layer} out`,
            patch: leaveOutPatch(brief, layer),
          },
        ],
      },
    ];
  });
}

function depth(brief: Brief, { finishedLengthMm }: Size, dip: Dip): Finding[] {
  const usualMm = Math.min(USUAL_DIP_SHARE.value * dip.spanMm, finishedLengthMm / 4);
  const remedies: Remedy[] = [
    {
      label: `Let it dip by ${lengthText(usualMm, brief.units)}`,
      patch: settingPatch(brief, "relax", "dipMm", usualMm),
    },
  ];
  if (dip.tooDeep) {
    return [
      {
        ...atShade(brief, "making/relax/dipMm"),
        id: "shape.relaxed-dip-too-deep",
        weight: "fix",
        text: `The dip that was asked for is more than a third of the length; ${lengthText(dip.dipMm, brief.units)} is planned.`,
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
      ...atShade(brief, "making/relax/dipMm"),
      id: "shape.relaxed-dip-shallow",
      weight: "mind",
      text: `The lower edge dips by ${lengthText(dip.dipMm, brief.units)} over ${lengthText(dip.spanMm, brief.units)}. ${pull}`,
      cite: cite("catenary", "pull along the lowest point over the weight of the cord"),
      remedies,
    },
  ];
}

function both(brief: Brief, dip: Dip): Finding[] {
  if (!dip.disagrees) return [];
  const asked = brief.making.relax.extraWidthMm ?? 0;
  return [
    {
      ...atShade(brief, "making/relax/extraWidthMm"),
      id: "shape.relaxed-dip-and-width",
      weight: "mind",
      text: `Dip and extra width are both fixed and do not agree: a dip of ${lengthText(dip.dipMm, brief.units)} takes ${lengthText(dip.extraMm, brief.units)}, not ${lengthText(asked, brief.units)}. The dip is kept.`,
      cite: cite("catenary"),
      remedies: [
        {
          label: `Set the extra width to ${lengthText(dip.extraMm, brief.units)}`,
          patch: settingPatch(brief, "relax", "extraWidthMm", dip.extraMm),
        },
      ],
    },
  ];
}
