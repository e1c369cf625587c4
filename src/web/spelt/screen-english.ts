import { asWritten, type Spell } from "../../words/index.ts";

let now: Spell = asWritten;

/** Puts what is shown from here on into another English. What is on the screen is shown anew by `useEnglish`. */
export function speakOnScreen(spell: Spell): void {
  now = spell;
}

/** How words on the screen are spelt now. */
export function screenSpelling(): Spell {
  return now;
}
