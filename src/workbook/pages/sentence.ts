import { LAYER_NAMES } from "../../shade/index.ts";
import { massText } from "../../units/index.ts";
import type { ShadeContext } from "../shade-context.ts";

const MOUNT_WORDS = {
  inside: "inside the opening",
  outside: "outside the opening",
  "to-size": "made to the size given",
} as const;

export const STYLE_WORDS = { flat: "flat" } as const;

function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}

/** The same with a capital letter at its beginning. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** A remark as a sentence: capital letter, full stop. */
export function sentence(text: string): string {
  return capital(/[.!?]$/.test(text) ? text : `${text}.`);
}

export function count(number: number, one: string, many = `${one}s`): string {
  return `${number} ${number === 1 ? one : many}`;
}

/** The whole shade in one sentence. */
export function shadeSentence({ shade, plan, length }: ShadeContext): string {
  const { size, grid, cloth, lift, mass } = shade;
  const layers = listed(cloth.layers.map(({ layer }) => LAYER_NAMES[layer].toLowerCase()));
  return (
    `A ${STYLE_WORDS[shade.style]} shade, ${length(size.finishedWidthMm)} wide and ` +
    `${length(size.finishedLengthMm)} long, ${MOUNT_WORDS[shade.mount]}: ${layers}, ` +
    `${count(grid.rows.length, "row")} of ${count(grid.columns.length, "ring")}, ` +
    `worked from the ${lift.controlSide} with ${count(lift.cords.length, "cord")} and a cord lock. ` +
    `It weighs ${massText(mass.totalKg, plan.units)}.`
  );
}
