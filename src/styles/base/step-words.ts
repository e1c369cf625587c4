import { lengthText } from "../../units/index.ts";
import type { StyleStepInput } from "../style.ts";

/** The usual words about hot irons. */
export const IRON =
  "Iron and steam burn. Stand the iron upright, keep your hand out of the steam, and try a scrap first.";

/** The usual words about ladders. */
export const LADDER = "Stand on a steady ladder on a firm floor, and do not lean out to either side.";

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

/** `a`, `a and b`, `a, b and c`. */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? "";
  return items.length < 2 ? last : `${items.slice(0, -1).join(", ")} and ${last}`;
}

/** How the bottom hem is turned, as the start of a sentence. */
export function hemTurn(input: StyleStepInput): string {
  const { bottomTurnMm, bottomTurns } = input.shade.making.hems;
  const { len } = stepWords(input);
  return bottomTurns === 2
    ? `Turn the lower edge up by ${len(bottomTurnMm)} and press, then by ${len(bottomTurnMm)} again`
    : `Turn the lower edge up by ${len(bottomTurnMm)}, its raw edge neatened`;
}
