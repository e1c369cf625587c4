import type { Remedy } from "../figures/index.ts";
import { type Brief, settingPatch } from "../job/index.ts";
import { lengthText } from "../units/index.ts";

/** Edge columns moved in, where what they must clear still leaves them in the outer quarters of the shade. */
export function insetRemedy(brief: Brief, insetMm: number, finishedWidthMm: number): Remedy[] {
  if (insetMm > finishedWidthMm / 4) return [];
  return [
    {
      label: `Set the edge columns in by ${lengthText(insetMm, brief.units)}`,
      patch: settingPatch(brief, "columns", "edgeInsetMm", insetMm),
    },
  ];
}

/** A board that falls short of the shade by less than it does now. */
export function boardRemedy(brief: Brief, shorterMm: number, nowShorterMm: number): Remedy[] {
  if (shorterMm < 0 || shorterMm >= nowShorterMm) return [];
  return [
    {
      label:
        shorterMm === 0
          ? "Make the board as long as the shade is wide"
          : `Make the board only ${lengthText(shorterMm, brief.units)} shorter than the shade`,
      patch: settingPatch(brief, "mount", "boardShorterMm", shorterMm),
    },
  ];
}
