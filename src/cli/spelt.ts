import { type English, spellerOf } from "../job/index.ts";
import { asWritten, type Spell } from "../words/index.ts";
import type { Io } from "./io.ts";

/** Some words grow by a letter; lines are broken before they do. */
const GROWS_BY = 3;

/** The same for a job whose reader spells otherwise: for words, never for JSON or paths. */
export function speltIo(io: Io, english: English): Io {
  const spell = spellerOf(english);
  if (spell === asWritten) return io;
  return {
    ...io,
    out: (text) => io.out(spell(text)),
    err: (text) => io.err(spell(text)),
    columns: io.columns - GROWS_BY,
  };
}

/** Texts of a plan by the names of their fields; all else is ids, addresses and kinds. */
const TEXT_KEYS = new Set([
  ..."against answer caption check caution cure formula label line name note noun of open question readAs".split(
    " ",
  ),
  ..."reason roomName says stampText text title what why windowName words".split(" "),
]);

/** For `JSON.stringify`: texts of a plan spelt, and what machines read left alone. */
export function speltTexts(spell: Spell): ((key: string, value: unknown) => unknown) | undefined {
  if (spell === asWritten) return undefined;
  return (key, value) =>
    typeof value === "string" && (TEXT_KEYS.has(key) || value.includes(" ")) ? spell(value) : value;
}
