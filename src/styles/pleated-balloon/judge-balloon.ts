import type { Finding } from "../../figures/index.ts";
import { type ResolvedShade, settingPatch } from "../../job/index.ts";
import type { Form, Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches, lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";

/** Less cloth across a pouf than this much more than its width hardly swells. */
const LEAST_FULLNESS = sourced(1.3, "ratio", cite("our-choice"));
const SAME_MM = 0.5;

export function judgeBalloon(resolved: ResolvedShade, size: Size, form: Form): Finding[] {
  return [...thinPoufs(resolved, form), ...bigPouf(resolved, size, form), ...barred(resolved, form)];
}

function thinPoufs(resolved: ResolvedShade, { ease = [] }: Form): Finding[] {
  const [thinnest] = [...ease].sort(
    (a, b) => a.extraMm / (a.toMm - a.fromMm) - b.extraMm / (b.toMm - b.fromMm),
  );
  if (thinnest === undefined) return [];
  const widthMm = thinnest.toMm - thinnest.fromMm;
  if (widthMm + thinnest.extraMm >= LEAST_FULLNESS.value * widthMm) return [];
  const { pleat } = resolved.making;
  const remedies =
    pleat.held === "sewn"
      ? [
          {
            label: "Press the pleats below the top, so that they open",
            patch: settingPatch(resolved, "pleat", "held", "pressed"),
          },
        ]
      : pleat.edges === "none"
        ? [{ label: "Half a pleat at each edge", patch: settingPatch(resolved, "pleat", "edges", "half") }]
        : [
            {
              label: "Fold away 8 in (20 cm)",
              patch: settingPatch(resolved, "pleat", "foldedMm", inches(8)),
            },
          ];
  return [
    {
      ...atShade(resolved, "making/pleat/foldedMm"),
      id: "shape.poufs-thin",
      severity: "note",
      text: `A pouf ${lengthText(widthMm, resolved.units)} wide has only ${lengthText(thinnest.extraMm, resolved.units)} more cloth across at the hem: it hardly swells.`,
      cite: LEAST_FULLNESS.cite,
      remedies,
    },
  ];
}

function bigPouf(resolved: ResolvedShade, size: Size, { pouf }: Form): Finding[] {
  const asked = resolved.making.pouf.clothMm;
  if (pouf === undefined || pouf.clothMm >= asked - SAME_MM) return [];
  const fits = Math.floor(pouf.clothMm);
  return [
    {
      ...atShade(resolved, "making/pouf/clothMm"),
      id: "shape.pouf-too-big",
      severity: "fix",
      text: `A pouf of ${lengthText(asked, resolved.units)} has no room in a shade ${lengthText(size.finishedLengthMm, resolved.units)} long; ${lengthText(pouf.clothMm, resolved.units)} stay up.`,
      cite: cite("our-choice"),
      remedies: [
        {
          label: `Keep ${lengthText(fits, resolved.units)} up`,
          patch: settingPatch(resolved, "pouf", "clothMm", fits),
        },
      ],
    },
  ];
}

function barred(resolved: ResolvedShade, { bar }: Form): Finding[] {
  if (bar === undefined) return [];
  return [
    {
      ...atShade(resolved, "making/pleat/bar"),
      id: "shape.balloon-bar",
      severity: "fix",
      text: "A bar along the hem keeps it straight, and the poufs cannot hang.",
      cite: cite("our-choice"),
      remedies: [{ label: "Leave the bar out", patch: settingPatch(resolved, "pleat", "bar", "none") }],
    },
  ];
}
