import type { Finding } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { forceText } from "../../units/index.ts";
import { EASY_PULL, HARD_PULL, lighterBars } from "../judge-pull.ts";
import type { TubeInput } from "../lift-input.ts";

/** Can a hand work it? */
export function hardHandPull({ shade }: TubeInput, { pullN }: TubeLift, where: string): Finding[] {
  if (pullN <= EASY_PULL.value) return [];
  const hard = pullN > HARD_PULL.value;
  const mark = hard ? HARD_PULL : EASY_PULL;
  const text = (forceN: number) => forceText(forceN, shade.units);
  return [
    {
      shadeId: shade.shadeId,
      id: "lift.hard-pull",
      path: `${shade.path}/shade/making/lift/drive`,
      stage: "lift",
      severity: hard || shade.purpose === "public-building" ? "fix" : "note",
      text: `Raising it takes about ${text(pullN)} ${where}. ${hard ? `Nearly everyone can pull ${text(mark.value)} with one arm, not everyone more.` : `A pull up to ${text(mark.value)} is easy for one hand.`} A drive with a higher ratio or a larger wheel, a lighter bar or cloth, or two shades side by side make it lighter.`,
      cite: mark.cite,
      figures: ["lift.pull"],
      remedies: lighterBars(shade),
    },
  ];
}
