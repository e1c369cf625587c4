import { PRINT_SETS, type PrintSet, SET_PRESETS, type SetPreset } from "../workbook/index.ts";
import { badInput } from "./bad-input.ts";
import { nearest } from "./nearest.ts";

const PRESETS = Object.keys(SET_PRESETS) as SetPreset[];

/** What may be typed after `--print`, for the help. */
export const PRINT_HELP = `what to print, by commas: ${PRINT_SETS.join(", ")}; or for whom: ${PRESETS.join(", ")}`;

/** `table,steps` or `client` as sets. Throws `BadInput` on a word that names none. */
export function setsOf(typed: string): PrintSet[] {
  const words = typed
    .split(",")
    .map((word) => word.trim().toLowerCase())
    .filter((word) => word !== "");
  if (words.length === 0) throw unknown(typed);
  return words.flatMap((word): readonly PrintSet[] => {
    if (isPreset(word)) return SET_PRESETS[word];
    if (isSet(word)) return [word];
    throw unknown(word);
  });
}

function isPreset(word: string): word is SetPreset {
  return Object.hasOwn(SET_PRESETS, word);
}

/** A set that is a preset too, such as `client`, is the same either way. */
function isSet(word: string): word is PrintSet {
  return (PRINT_SETS as readonly string[]).includes(word);
}

function unknown(word: string) {
  const all = [...PRINT_SETS, ...PRESETS.filter((name) => !isSet(name))];
  const close = nearest(word, all);
  return badInput("--print", JSON.stringify(word), close ?? `one or more of ${all.join(", ")}`);
}
