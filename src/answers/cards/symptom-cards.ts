import { type Cause, diagnose, SYMPTOM_NAMES, SYMPTOMS, type Symptom } from "../../diagnose/index.ts";
import { cite } from "../../sources/index.ts";
import type { QuestionCard } from "../card.ts";

/** How it is asked by who does not know our word for it. */
const ASKED: Record<Symptom, readonly [question: string, also: string]> = {
  "hem-not-level": ["Why is the hem not level?", "crooked uneven slope lopsided one side lower"],
  "hard-to-raise": ["Why is it so hard to raise?", "stiff heavy pull effort friction"],
  "will-not-rise": ["Why does it not rise all the way?", "stops short stuck half way up"],
  "lock-jams": ["Why does the cord jam in the lock?", "stuck jammed wedged caught will not release"],
  "lock-slips": ["Why does the lock slip?", "will not hold does not catch lock falls drops lets go"],
  "cord-frays": ["Why does a cord fray?", "worn wears out fuzzy shredded breaks"],
  "leans-to-one-side": ["Why does it lean to one side as it rises?", "skew fans slants sideways tilts"],
  "will-not-stay": ["Why does it creep up or down by itself?", "creeps drifts sinks slowly falls spring"],
  "folds-sag": ["Why do the folds sag between the columns?", "droop bow smile limp wide spacing"],
  puckers: ["Why does the face pucker at the rings?", "dimples gathers pull wrinkles"],
  "pattern-smiles": ["Why does the pattern curve down in the middle?", "smile curve bow stripes"],
  "sides-draw-in": ["Why do the sides draw in?", "hourglass narrow waist edges curl inwards"],
  swings: ["Why does it swing in a draught?", "blows flaps moves wind"],
  "points-of-light": ["Why do points of light show through?", "pinholes needle holes blackout"],
  "board-bends": ["Why does the board bend or come away?", "sags falls pulls out wall loose"],
};

/** Each symptom as a question: what can be behind it, what these numbers point to first. */
export const SYMPTOM_CARDS: readonly QuestionCard[] = SYMPTOMS.map((symptom) => {
  const [question, also] = ASKED[symptom];
  return {
    id: symptom,
    question,
    also: `${also} ${SYMPTOM_NAMES[symptom]}`,
    asks: ["widthMm", "lengthMm", "cordMm", "massGsm"],
    answer: ({ job, place: [room, window], shade, locked }) => {
      const over = locked();
      // Asked of a lock, it is answered for one.
      const asked = symptom.startsWith("lock-") && over !== undefined ? over : shade;
      const causes = diagnose(job, room, window, symptom, asked);
      const [first, ...others] = causes;
      return {
        text:
          first === undefined
            ? "Nothing of this shade can be behind it."
            : `${leads(first)}: ${first.title.toLowerCase()}. ${first.cure}`,
        figures: causes.map(({ title, why }) => ({ label: title, text: why })),
        reason:
          first === undefined
            ? "It has no part that could show this."
            : `To be sure: ${first.test}${others.length === 0 ? "" : ` If not: ${others.map(({ test }) => test).join(" ")}`}`,
        cite: first?.cite ?? cite("common-practice"),
      };
    },
  };
});

function leads({ evidence }: Cause): string {
  return evidence === "points-to-it" ? "The numbers point to this" : "Look at this first";
}
