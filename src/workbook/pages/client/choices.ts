import type { Plan, ShadePlan } from "../../../plan/index.ts";
import { placeWithArticle, purposeText } from "../../../safety/index.ts";
import { counted, listed } from "../../../words/index.ts";

/** What was chosen, in plain words: the place, what its shades are for, and how many rules they stand against. */
export function childSafetyChoices(plan: Plan, shades: readonly ShadePlan[]): string[] {
  const { place, purpose } = plan;
  const where = whereText(place);
  const why = purpose === undefined ? "for whom was not said" : purposeText(purpose);
  const failing = shades.filter(({ safety }) => safety.counts.failed > 0);
  const corded = shades.filter(({ lift }) => lift.cordsAtFront);
  return [
    `Planned for ${where}, ${why}.`,
    corded.length === 0
      ? "No cord hangs at the front. Cords run up the back, and they are a hazard to small children too."
      : `${corded.length === shades.length ? (shades.length === 1 ? "The shade has" : "Every shade has") : `${named(corded)} ${corded.length === 1 ? "has" : "have"}`} a cord or a loop that hangs at the front, where a child can come to it. A lift without free cords can be had instead: ask for it.`,
    failing.length === 0
      ? "None of the rules on cords that were read was shown to fail; that proves nothing about the shade on the wall."
      : `Of the rules on cords that were read, some failed for ${failing.length < shades.length ? named(failing) : shades.length === 1 ? "this shade" : "every shade"}: ask ${failing.some(({ lift }) => lift.cordsAtFront) ? "for a lift without free cords" : "what can be had instead"}.`,
  ];
}

function whereText(place: Plan["place"]): string {
  if (place === undefined) return "a place that was not said";
  return place === "elsewhere" ? "a place whose rules were not read" : placeWithArticle(place);
}

const MOST = 4;

function named(shades: readonly ShadePlan[]): string {
  const names = shades.map(({ windowName }) => windowName);
  return names.length <= MOST ? listed(names) : counted(names.length, "shade");
}
