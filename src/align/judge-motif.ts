import type { Finding } from "../figures/index.ts";
import { type PatchedShade, type ResolvedShade, settingPatch } from "../job/index.ts";
import type { ClothPlan } from "../shade-plan/index.ts";
import { cite } from "../sources/index.ts";
import { lengthText, markMm } from "../units/index.ts";
import { awayFrom, type MotifStart } from "./motif.ts";

/** A shade whose cloth is cut, and where its room wants the pattern to begin. */
export interface JudgeMotifInput {
  shade: PatchedShade & Pick<ResolvedShade, "shadeId" | "windowName" | "units">;
  motif: MotifStart;
  cloth: Pick<ClothPlan, "layers">;
}

/** The cloth as it was cut in the end: a face that lies turned on the bolt repeats otherwise along the shade. */
export function judgeMotif({ shade, motif, cloth: { layers } }: JudgeMotifInput): Finding[] {
  const falls = layers.find(({ layer }) => layer === "face")?.motif;
  if (falls === undefined) return [];
  const mark = markMm(shade.units.ruler);
  const meets =
    Math.abs(falls.repeatYMm - motif.repeatMm) < mark / 2 &&
    awayFrom(falls.originYMm - motif.fromTopMm, falls.repeatYMm) < mark / 2;
  if (meets) return [];
  return [
    {
      id: "align.motif-missed",
      severity: "fix",
      stage: "cloth",
      shadeId: shade.shadeId,
      path: `${shade.path}/shade/making/pattern/railroad`,
      text: `On ${shade.windowName} the pattern repeats every ${lengthText(falls.repeatYMm, shade.units)} down the shade instead of ${lengthText(motif.repeatMm, shade.units)}, so it does not meet that of its neighbours.`,
      cite: cite("set-of-shades", "one start line for a set"),
      remedies: [
        {
          label: "Cut the face along the bolt",
          patch: settingPatch(shade, "pattern", "railroad", "never"),
        },
      ],
    },
  ];
}
