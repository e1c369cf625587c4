import type { Remedy } from "../figures/index.ts";
import { settingPatch } from "../job/index.ts";
import { lengthText } from "../units/index.ts";
import type { LiftShade } from "./lift-input.ts";

/** Edge columns moved in, where what they must clear still leaves them in the outer quarters of the shade. */
export function insetRemedy(shade: LiftShade, insetMm: number, finishedWidthMm: number): Remedy[] {
  if (insetMm > finishedWidthMm / 4) return [];
  return [
    {
      label: `Set the edge columns in by ${lengthText(insetMm, shade.units)}`,
      patch: settingPatch(shade, "columns", "edgeInsetMm", insetMm),
    },
  ];
}

/** A board that falls short of the shade by less than it does now. */
export function boardRemedy(shade: LiftShade, shorterMm: number, nowShorterMm: number): Remedy[] {
  if (shorterMm < 0 || shorterMm >= nowShorterMm) return [];
  return [
    {
      label:
        shorterMm === 0
          ? "Make the board as long as the shade is wide"
          : `Make the board only ${lengthText(shorterMm, shade.units)} shorter than the shade`,
      patch: settingPatch(shade, "mount", "boardShorterMm", shorterMm),
    },
  ];
}
