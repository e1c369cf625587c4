import type { Finding } from "../../figures/index.ts";
import { type Brief, settingPatch } from "../../job/index.ts";
import type { Form, Size } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import { inches, lengthText } from "../../units/index.ts";
import { atShade } from "../at-shade.ts";

/** Less cloth across a pouf than this much more than its width hardly swells. */
const LEAST_FULLNESS = sourced(1.3, "ratio", cite("our-choice"));
const SAME_MM = 0.5;

export function judgeBalloon(brief: Brief, size: Size, form: Form): Finding[] {
  return [...thinPoufs(brief, form), ...bigPouf(brief, size, form), ...barred(brief, form)];
}

function thinPoufs(brief: Brief, { ease = [] }: Form): Finding[] {
  const [thinnest] = [...ease].sort(
    (a, b) => a.extraMm / (a.toMm - a.fromMm) - b.extraMm / (b.toMm - b.fromMm),
  );
  if (thinnest === undefined) return [];
  const widthMm = thinnest.toMm - thinnest.fromMm;
  if (widthMm + thinnest.extraMm >= LEAST_FULLNESS.value * widthMm) return [];
  const { pleat } = brief.making;
  const remedies =
    pleat.held === "sewn"
      ? [
          {
            label: "Press the pleats below the top, so that they open",
            patch: settingPatch(brief, "pleat", "held", "pressed"),
          },
        ]
      : pleat.edges === "none"
        ? [{ label: "Half a pleat at each edge", patch: settingPatch(brief, "pleat", "edges", "half") }]
        : [{ label: "Fold away 8 in (20 cm)", patch: settingPatch(brief, "pleat", "foldedMm", inches(8)) }];
  return [
    {
      ...atShade(brief, "making/pleat/foldedMm"),
      id: "shape.poufs-thin",
      weight: "mind",
      text: `A pouf ${lengthText(widthMm, brief.units)} wide has only ${lengthText(thinnest.extraMm, brief.units)} more cloth across at the hem: it hardly swells.`,
      cite: LEAST_FULLNESS.cite,
      remedies,
    },
  ];
}

function bigPouf(brief: Brief, size: Size, { pouf }: Form): Finding[] {
  const asked = brief.making.pouf.clothMm;
  if (pouf === undefined || pouf.clothMm >= asked - SAME_MM) return [];
  const fits = Math.floor(pouf.clothMm);
  return [
    {
      ...atShade(brief, "making/pouf/clothMm"),
      id: "shape.pouf-too-big",
      weight: "fix",
      text: `A pouf of ${lengthText(asked, brief.units)} has no room in a shade ${lengthText(size.finishedLengthMm, brief.units)} long; ${lengthText(pouf.clothMm, brief.units)} stay up.`,
      cite: cite("our-choice"),
      remedies: [
        {
          label: `Keep ${lengthText(fits, brief.units)} up`,
          patch: settingPatch(brief, "pouf", "clothMm", fits),
        },
      ],
    },
  ];
}

function barred(brief: Brief, { bar }: Form): Finding[] {
  if (bar === undefined) return [];
  return [
    {
      ...atShade(brief, "making/pleat/bar"),
      id: "shape.balloon-bar",
      weight: "fix",
      text: "A bar along the hem keeps it straight, and the poufs cannot hang.",
      cite: cite("our-choice"),
      remedies: [{ label: "Leave the bar out", patch: settingPatch(brief, "pleat", "bar", "none") }],
    },
  ];
}
