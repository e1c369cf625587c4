import { lengthText } from "../../units/index.ts";
import type { StyleStepInput } from "../style.ts";

/** What the steps of a style put into words. */
export function stepWords({ shade, cloth, size }: StyleStepInput) {
  const { hems } = shade.making;
  return {
    len: (mm: number) => lengthText(mm, shade.units),
    back: cloth.layers.some(({ layer }) => layer === "lining") ? "lining" : "wrong side of the face",
    bottomHemMm: hems.bottomTurnMm * hems.bottomTurns,
    lengthMm: size.finishedLengthMm,
  };
}

/** How the bottom hem is turned, as the start of a sentence. */
export function hemTurn(input: StyleStepInput): string {
  const { bottomTurnMm, bottomTurns } = input.shade.making.hems;
  const { len } = stepWords(input);
  return bottomTurns === 2
    ? `Turn the lower edge up by ${len(bottomTurnMm)} and press, then by ${len(bottomTurnMm)} again`
    : `Turn the lower edge up by ${len(bottomTurnMm)}, its raw edge neatened`;
}
