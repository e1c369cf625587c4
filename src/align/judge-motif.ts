import type { Finding } from "../figures/index.ts";
import { type ResolvedShade, settingPatch } from "../job/index.ts";
import type { ClothPlan } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText, markMm } from "../units/index.ts";
import { awayFrom, type MotifStart } from "./motif.ts";

/** The cloth as it was cut in the end: a face that lies turned on the bolt repeats otherwise along the shade. */
export function judgeMotif(resolved: ResolvedShade, motif: MotifStart, { layers }: ClothPlan): Finding[] {
  const falls = layers.find(({ layer }) => layer === "face")?.motif;
  if (falls === undefined) return [];
  const mark = markMm(resolved.units.ruler);
  const meets =
    Math.abs(falls.repeatYMm - motif.repeatMm) < mark / 2 &&
    awayFrom(falls.originYMm - motif.fromTopMm, falls.repeatYMm) < mark / 2;
  if (meets) return [];
  return [
    {
      id: "align.motif-missed",
      severity: "fix",
      stage: "cloth",
      shadeId: resolved.shadeId,
      path: `${resolved.path}/shade/making/pattern/railroad`,
      text: `On ${resolved.windowName} the pattern repeats every ${lengthText(falls.repeatYMm, resolved.units)} down the shade instead of ${lengthText(motif.repeatMm, resolved.units)}, so it does not meet that of its neighbours.`,
      cite: cite("set-of-shades", "one start line for a set"),
      remedies: [
        {
          label: "Cut the face along the bolt",
          patch: settingPatch(resolved, "pattern", "railroad", "never"),
        },
      ],
    },
  ];
}
