import type { Finding } from "../../figures/index.ts";
import type { TubeLift } from "../../shade-plan/index.ts";
import { forceText } from "../../units/index.ts";
import { hardPull } from "../hard-pull.ts";
import { lighterBars } from "../judge-pull.ts";
import type { TubeInput } from "../lift-input.ts";

/** Can a hand work it? */
export function hardHandPull({ shade }: TubeInput, { pullN }: TubeLift, where: string): Finding[] {
  return hardPull(shade, pullN, {
    path: `${shade.path}/shade/making/lift/drive`,
    takes: `Raising it takes about ${forceText(pullN, shade.units)} ${where}.`,
    eases:
      "A drive with a higher ratio or a larger wheel, a lighter bar or cloth, or two shades side by side make it lighter.",
    figures: ["lift.pull"],
    remedies: lighterBars(shade),
  });
}
