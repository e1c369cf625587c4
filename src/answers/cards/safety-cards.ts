import { PLACE_NAMES, PLACES, type Place } from "../../job/index.ts";
import { planWindow } from "../../plan/index.ts";
import { carefulLift } from "../../safety/index.ts";
import { hangingCords, RULE_OUTCOME_NAMES, RULE_OUTCOMES } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { AnswerFigure } from "../answer-figure.ts";
import type { QuestionCard } from "../card.ts";
import type { AskedShade } from "../facts.ts";

/** What the rules of a place come to for this very shade, sold there. */
function soldIn({ job, place: [room, window] }: AskedShade, place: Place): AnswerFigure[] {
  const counts = planWindow({ ...job, place, purpose: "for-sale" }, room, window)?.safety.counts;
  if (counts === undefined) return [];
  const text = RULE_OUTCOMES.filter((outcome) => outcome !== "does-not-apply" && counts[outcome] > 0)
    .map((outcome) => `${counts[outcome]} ${RULE_OUTCOME_NAMES[outcome]}`)
    .join(", ");
  return [{ label: PLACE_NAMES[place], text: text === "" ? "no rule was read that applies" : text }];
}

export const SAFETY_CARDS: readonly QuestionCard[] = [
  {
    id: "may-i-sell",
    question: "May I sell it?",
    also: "sell law legal rules business client customer gift regulations standard allowed",
    asks: ["widthMm", "lengthMm", "rowsApartMm"],
    answer: (facts) => {
      const { place } = facts.job;
      const places = place === undefined ? PLACES.filter((one) => one !== "elsewhere") : [place];
      const lock = facts.shade.lift.cordsAtFront ? "Its cords hang at the front. " : "";
      return {
        text: `${lock}That is for the law of the place, and no plan can answer it. What the rules that were read come to for this shade, sold${place === undefined ? "" : " there"}:`,
        figures: places.flatMap((one) => soldIn(facts, one)),
        reason:
          "One failed rule is enough to stop a sale; one not proven wants its test first; none shown to fail is no leave to sell. Many places rule on cords of goods that are sold or given away, some on a single one. Read the current text, and ask a test house.",
        cite: cite("cord-rules-at-a-glance"),
      };
    },
  },
  {
    id: "without-cords",
    question: "Can it work without cords at the front?",
    also: "cordless no cord children spring motor wand chain loop alternatives",
    asks: ["widthMm", "lengthMm", "massGsm"],
    answer: (facts) => {
      const careful = carefulLift(facts.job);
      return {
        text:
          careful.kind === "cord-lock"
            ? "Yes: a spring, a wand or a motor turns a tube under the board instead."
            : "Yes, and that is what is proposed first: a spring that balances the weight, or a wand or a motor that turns the tube under the board.",
        figures: [...facts.figure(facts.shade, "lift.held"), ...facts.figure(facts.shade, "shape.travel")],
        reason: `${careful.why} Cords at the back remain: closer rows, or a sleeve round them, keep them from being drawn into a loop.`,
        cite: careful.cite,
      };
    },
  },
  {
    id: "cords-and-children",
    question: "What makes the cords dangerous?",
    also: "child safety children strangle hazard baby toddler loop cord cot bed furniture tail length",
    asks: ["lengthMm", "rowsApartMm"],
    answer: (facts) => {
      const locked = facts.locked();
      const tails = locked === undefined ? [] : hangingCords(locked.lift);
      return {
        text: "A loop or a cord that goes round a small neck. It takes seconds and makes no noise.",
        figures: [
          ...tails.flatMap(({ downMm, upMm }) => [
            { label: "Over a lock, cord at hand lowered", text: facts.len(downMm) },
            { label: "Over a lock, cord at hand raised", text: facts.len(upMm) },
          ]),
          {
            label: "Cord between two rows at the back",
            text: facts.len(Math.max(0, ...facts.shade.grid.spacingsMm)),
          },
        ],
        reason:
          "The higher the shade, the more cord hangs out of the lock. At the back, cord can be drawn from between two rings. No cleat, lock or connector removes the hazard: choose a lift without free cords, and keep cots, beds and furniture away from the window.",
        cite: cite("inner-cord-hazard"),
      };
    },
  },
];
