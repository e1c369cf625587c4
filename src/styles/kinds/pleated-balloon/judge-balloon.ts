import type { Finding } from "../../../figures/index.ts";
import { settingPatch } from "../../../job/index.ts";
import type { Form, Size } from "../../../shade-plan/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import { inches, lengthText } from "../../../units/index.ts";
import { atShade } from "../../base/at-shade.ts";
import type { ShadeWith } from "../../base/style-shade.ts";

type BalloonShade = ShadeWith<"pleat" | "pouf">;

/** Less cloth across a pouf than this much more than its width hardly swells. */
const LEAST_FULLNESS = sourced(1.3, "ratio", cite("our-choice"));
const SAME_MM = 0.5;

/** What speaks against these poufs: too little cloth across, too much along, a bar that holds them straight. */
export function judgeBalloon(shade: BalloonShade, size: Size, form: Form): Finding[] {
  return [...thinPoufs(shade, form), ...bigPouf(shade, size, form), ...barred(shade, form)];
}

function thinPoufs(shade: BalloonShade, { ease = [] }: Form): Finding[] {
  const [thinnest] = [...ease].sort(
    (a, b) => a.extraMm / (a.toMm - a.fromMm) - b.extraMm / (b.toMm - b.fromMm),
  );
  if (thinnest === undefined) return [];
  const widthMm = thinnest.toMm - thinnest.fromMm;
  if (widthMm + thinnest.extraMm >= LEAST_FULLNESS.value * widthMm) return [];
  const { pleat } = shade.making;
  const remedies =
    pleat.held === "sewn"
      ? [
          {
            label: "Press the pleats below the top, so that they open",
            patch: settingPatch(shade, "pleat", "held", "pressed"),
          },
        ]
      : pleat.edges === "none"
        ? [{ label: "Half a pleat at each edge", patch: settingPatch(shade, "pleat", "edges", "half") }]
        : [
            {
              label: "Fold away 8 in (20 cm)",
              patch: settingPatch(shade, "pleat", "foldedMm", inches(8)),
            },
          ];
  return [
    {
      ...atShade(shade, "making/pleat/foldedMm"),
      id: "shape.poufs-thin",
      severity: "note",
      text: `A pouf ${lengthText(widthMm, shade.units)} wide has only ${lengthText(thinnest.extraMm, shade.units)} more cloth across at the hem: it hardly swells.`,
      cite: LEAST_FULLNESS.cite,
      remedies,
    },
  ];
}

function bigPouf(shade: BalloonShade, size: Size, { pouf }: Form): Finding[] {
  const asked = shade.making.pouf.clothMm;
  if (pouf === undefined || pouf.clothMm >= asked - SAME_MM) return [];
  const fits = Math.floor(pouf.clothMm);
  return [
    {
      ...atShade(shade, "making/pouf/clothMm"),
      id: "shape.pouf-too-big",
      severity: "fix",
      text: `A pouf of ${lengthText(asked, shade.units)} has no room in a shade ${lengthText(size.finishedLengthMm, shade.units)} long; ${lengthText(pouf.clothMm, shade.units)} stay up.`,
      cite: cite("our-choice"),
      remedies: [
        {
          label: `Keep ${lengthText(fits, shade.units)} up`,
          patch: settingPatch(shade, "pouf", "clothMm", fits),
        },
      ],
    },
  ];
}

function barred(shade: BalloonShade, { bar }: Form): Finding[] {
  if (bar === undefined) return [];
  return [
    {
      ...atShade(shade, "making/pleat/bar"),
      id: "shape.balloon-bar",
      severity: "fix",
      text: "A bar along the hem keeps it straight, and the poufs cannot hang.",
      cite: cite("our-choice"),
      remedies: [{ label: "Leave the bar out", patch: settingPatch(shade, "pleat", "bar", "none") }],
    },
  ];
}
