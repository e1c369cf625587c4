import type { Finding, Remedy } from "../../../figures/index.ts";
import { leaveOutPatch, type StyleKind, settingPatch, stylePatch } from "../../../job/index.ts";
import type { Size } from "../../../shade-plan/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import { inches, lengthText } from "../../../units/index.ts";
import { atShade } from "../../base/at-shade.ts";
import { scallopOfSag } from "../../base/scallop.ts";
import type { ShadeWith } from "../../base/style-shade.ts";
import { type Dip, USUAL_DIP_SHARE } from "./dip.ts";

type RelaxedShade = ShadeWith<"relax" | "columns" | "ribs", "cloths">;

/** Widths that a dip still holds well, and beyond which it does not: recalled, no source found. */
export const HOLDS_WELL = sourced(inches(40), "mm", cite("from-memory", "up to about 40 in"));
export const HOLDS_NO_MORE = sourced(inches(48), "mm", cite("from-memory", "hardly over 48 in"));
/** A shallower dip draws the columns together with more than about twice the weight of the lower edge. */
const SHALLOW_SHARE = sourced(1 / 16, "ratio", cite("our-choice"));

/** What a dip does not go with, each with the reason. */
export function judgeRelaxed(shade: RelaxedShade, size: Size, dip: Dip): Finding[] {
  return [
    ...tooWide(shade, size),
    ...ribs(shade),
    ...bar(shade),
    ...columns(shade),
    ...stiff(shade),
    ...depth(shade, size, dip),
    ...both(shade, dip),
  ];
}

function styleRemedy(shade: RelaxedShade, style: StyleKind, label: string): Remedy {
  return { label, patch: stylePatch(shade, style) };
}

function tooWide(shade: RelaxedShade, { finishedWidthMm: width }: Size): Finding[] {
  if (width <= HOLDS_WELL.value) return [];
  const over = width > HOLDS_NO_MORE.value;
  const limit = over ? HOLDS_NO_MORE : HOLDS_WELL;
  return [
    {
      ...atShade(shade, "style"),
      id: "shape.relaxed-too-wide",
      severity: over ? "fix" : "note",
      text: `${lengthText(width, shade.units)} is wide for a relaxed shade: nothing carries it between the two columns, and over ${lengthText(limit.value, shade.units)} the dip ${over ? "no longer holds and the folds hang down in the middle" : "begins to sag unevenly"}. With lines in the middle it becomes a balloon, with its columns set in a tailed shade.`,
      cite: limit.cite,
      remedies: [
        styleRemedy(shade, "pleated-balloon", "Make it a pleated balloon"),
        styleRemedy(shade, "tailed", "Make it a tailed shade"),
      ],
    },
  ];
}

function ribs(shade: RelaxedShade): Finding[] {
  if (shade.making.ribs.kind === "none") return [];
  return [
    {
      ...atShade(shade, "making/ribs/kind"),
      id: "shape.relaxed-ribs",
      severity: "fix",
      text: "A rib across would hold the folds straight, and a relaxed shade is there to dip. The ribs are left out.",
      cite: cite("relaxed-notes", "no ribs"),
      remedies: [
        { label: "Ask for no ribs", patch: settingPatch(shade, "ribs", "kind", "none") },
        styleRemedy(shade, "ribbed", "Make it a ribbed shade"),
      ],
    },
  ];
}

function bar(shade: RelaxedShade): Finding[] {
  if (shade.making.relax.weight !== "bar") return [];
  return [
    {
      ...atShade(shade, "making/relax/weight"),
      id: "shape.relaxed-bar",
      severity: "fix",
      text: "A bar along the hem keeps it straight: only the folds above it dip, and the extra width puckers over it.",
      cite: cite("relaxed-notes"),
      remedies: [
        {
          label: "Put short weights at the columns",
          patch: settingPatch(shade, "relax", "weight", "at-columns"),
        },
        styleRemedy(shade, "flat", "Make it a flat shade"),
      ],
    },
  ];
}

function columns(shade: RelaxedShade): Finding[] {
  const { count } = shade.making.columns;
  if (count === undefined || count <= 2) return [];
  return [
    {
      ...atShade(shade, "making/columns/count"),
      id: "shape.relaxed-columns",
      severity: "fix",
      text: `${count} columns were asked for; a relaxed shade has two. A line in the middle would carry what is to dip, so the others are left out.`,
      cite: cite("relaxed-notes", "outer columns alone"),
      remedies: [
        { label: "Use 2 columns", patch: settingPatch(shade, "columns", "count", 2) },
        styleRemedy(shade, "pleated-balloon", "Make it a pleated balloon"),
      ],
    },
  ];
}

function stiff(shade: RelaxedShade): Finding[] {
  return (["interlining", "blackout"] as const).flatMap((layer): Finding[] => {
    const cloth = shade.cloths[layer];
    if (cloth === undefined) return [];
    return [
      {
        ...atShade(shade, layer),
        id: `shape.relaxed-${layer}`,
        severity: layer === "interlining" ? "fix" : "note",
        text: `With ${cloth.name} between face and lining the shade is stiff: its folds break in corners instead of hanging in a curve.`,
        cite: cite("from-memory"),
        remedies: [
          {
            label: `Leave the ${layer} out`,
            patch: leaveOutPatch(shade, layer),
          },
        ],
      },
    ];
  });
}

function depth(shade: RelaxedShade, { finishedLengthMm }: Size, dip: Dip): Finding[] {
  const usualMm = Math.min(USUAL_DIP_SHARE.value * dip.spanMm, finishedLengthMm / 4);
  const remedies: Remedy[] = [
    {
      label: `Let it dip by ${lengthText(usualMm, shade.units)}`,
      patch: settingPatch(shade, "relax", "dipMm", usualMm),
    },
  ];
  if (dip.tooDeep) {
    return [
      {
        ...atShade(shade, "making/relax/dipMm"),
        id: "shape.relaxed-dip-too-deep",
        severity: "fix",
        text: `The dip that was asked for is more than a third of the length; ${lengthText(dip.dipMm, shade.units)} is planned.`,
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
      ...atShade(shade, "making/relax/dipMm"),
      id: "shape.relaxed-dip-shallow",
      severity: "note",
      text: `The lower edge dips by ${lengthText(dip.dipMm, shade.units)} over ${lengthText(dip.spanMm, shade.units)}. ${pull}`,
      cite: cite("catenary", "pull along the lowest point over the weight of the cord"),
      remedies,
    },
  ];
}

function both(shade: RelaxedShade, dip: Dip): Finding[] {
  if (!dip.disagrees) return [];
  const asked = shade.making.relax.extraWidthMm ?? 0;
  return [
    {
      ...atShade(shade, "making/relax/extraWidthMm"),
      id: "shape.relaxed-dip-and-width",
      severity: "note",
      text: `Dip and extra width are both fixed and do not agree: a dip of ${lengthText(dip.dipMm, shade.units)} takes ${lengthText(dip.extraMm, shade.units)}, not ${lengthText(asked, shade.units)}. The dip is kept.`,
      cite: cite("catenary"),
      remedies: [
        {
          label: `Set the extra width to ${lengthText(dip.extraMm, shade.units)}`,
          patch: settingPatch(shade, "relax", "extraWidthMm", dip.extraMm),
        },
      ],
    },
  ];
}
