import { askLock } from "../../diagnose/index.ts";
import { hangingCords, ringCount } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { cordLengthText, fineText, trimmed } from "../../units/index.ts";
import { counted, listed } from "../../words/index.ts";
import type { QuestionCard } from "../card.ts";

export const CORD_CARDS: readonly QuestionCard[] = [
  {
    id: "any-cord",
    question: "Will any cord do?",
    also: "string twine thin thick diameter which cord size nylon cotton polyester",
    asks: ["cordMm", "widthMm", "columnsApartMm"],
    answer: (facts) => {
      const { shade, cords } = facts;
      const locked = facts.locked();
      const own = locked?.lift;
      const lock = facts.locks.find(({ id }) => id === own?.lockId);
      const count = shade.lift.cords.length;
      const tried =
        lock === undefined
          ? []
          : cords.map((cord) => ({ cord, found: askLock(count, cord.diameterMm, [lock])[0] }));
      const taken = tried.filter(({ found }) => found?.takes);
      return {
        text:
          lock === undefined
            ? "No: it must run over its spools, carry the load, and stretch little."
            : `No: it must suit the lock. “${lock.name}” takes ${taken.length === 0 ? "none of the cords at hand" : listed(taken.map(({ cord }) => fineText(cord.diameterMm)))} for ${counted(count, "cord")}.`,
        figures: [
          ...tried.map(({ cord, found }) => ({
            label: cord.name,
            text: found?.takes
              ? "goes"
              : (found?.remarks.find(({ severity }) => severity === "stop")?.text ?? "does not go"),
          })),
          ...facts.figure(shade, "lift.heaviest-cord"),
          ...facts.figure(shade, "lift.strength-knot"),
        ],
        reason:
          "Thin cord wedges between the roller and the housing, thick cord does not run, and a soft one frays on the teeth. All cords of a shade are of one size: the roller presses on the thickest, and thinner ones slip. 1.4 mm braided is the usual one. Measure yours by ten turns side by side round a pencil.",
        cite: cite("lock-instructions", "cord size"),
      };
    },
  },
  {
    id: "how-many-cords",
    question: "How many cords do I need?",
    also: "how many columns rings across spacing of columns how far apart lines",
    asks: ["widthMm", "columnsApartMm"],
    answer: (facts) => {
      const { shade } = facts;
      const { grid } = shade;
      return {
        text: `One for each column of rings: ${grid.columns.length}, ${facts.len(grid.columnSpacingMm)} apart, ${counted(ringCount(grid, shade.form), "ring")} in all.`,
        figures: [...facts.figure(shade, "shape.columns"), ...facts.figure(shade, "shape.column-spacing")],
        reason:
          "Between two columns nothing carries the folds: too far apart and they sag. Published spacings are 10 in in general, 10 to 12 in without ribs and 12 to 14 in with them.",
        cite: cite("ring-spacing-faq", "10 to 12 in without ribs, 12 to 14 with"),
      };
    },
  },
  {
    id: "cord-lengths",
    question: "How long are the cords?",
    also: "how much cord yards metres length of each cord tail knots buy spool",
    asks: ["widthMm", "lengthMm", "columnsApartMm", "rowsApartMm"],
    answer: (facts) => {
      const { shade } = facts;
      const { lift } = shade;
      return {
        text: `${cordLengthText(lift.cordTotalMm, facts.units)} in all, each cut to its own length.`,
        figures: lift.cords.flatMap(({ number }) => facts.figure(shade, `rig.cord-${number}-length`)),
        reason:
          lift.takeUp === "tube"
            ? "Each rises from the bottom ring to its own spool, with the turns that stay on it and cord for knots."
            : "Each rises from the bottom ring to its eye, runs along the board, and hangs down as the tail, with cord for knots. The one furthest from the lock is the longest.",
        cite: cite("geometry", "rise, run, tail and knots"),
      };
    },
  },
  {
    id: "knot-together",
    question: "May I knot the cords together below the lock?",
    also: "join tails connector condenser tassel one cord bundle",
    asks: ["lengthMm"],
    answer: (facts) => {
      const tails = hangingCords(facts.shade.lift);
      return {
        text:
          tails.length === 0
            ? "There is nothing to knot: no cord of this lift hangs at the front."
            : "Never into a loop, and a connector only where the rules of the place take it, just under the lock and made to come apart.",
        figures: tails.flatMap(({ count, downMm, upMm }) => [
          { label: "Cords that hang", text: String(count) },
          { label: "Below the lock, lowered", text: facts.len(downMm) },
          { label: "Below the lock, raised", text: facts.len(upMm) },
        ]),
        reason:
          "Joined cords are a loop as long as what lies between lock and knot, and it grows as the shade is raised. A child’s head goes into a loop, and consciousness is lost in seconds. A knot does not pass the lock either, and stops the shade on its way.",
        cite: cite("cord-hazard-nz"),
      };
    },
  },
  {
    id: "cord-load",
    question: "What does one cord carry?",
    also: "load on a cord strength breaking weight limit per cord",
    asks: ["widthMm", "lengthMm", "massGsm", "columnsApartMm"],
    answer: (facts) => {
      const { shade } = facts;
      const loads = shade.lift.cords.map(({ loadN }) => loadN);
      return {
        text: `${facts.force(Math.max(0, ...loads))} at most, with the shade raised.`,
        figures: [
          ...shade.lift.cords.map(({ number, loadN }) => ({
            label: `Cord ${number}`,
            text: facts.force(loadN),
          })),
          ...facts.figure(shade, "lift.strength-running"),
          ...facts.figure(shade, "lift.strength-knot"),
        ],
        reason:
          "A stiff bar spreads the weight over the columns as a beam spreads it over its supports: the cords next to the outer ones carry the most, not the outer ones. A knot keeps about half of a cord’s strength.",
        cite: cite("beam-theory"),
      };
    },
  },
  {
    id: "cord-stretch",
    question: "Will the cords stretch?",
    also: "stretch creep longer hem level after a while uneven",
    asks: ["widthMm", "lengthMm", "cordMm", "massGsm"],
    answer: (facts) => {
      const { levelMm } = facts.shade.lift.course;
      return {
        text:
          levelMm === undefined
            ? "How much cannot be told: the strength of the cord is not known."
            : `A little: by their loads and lengths the hem is ${trimmed(levelMm, 1)} mm out of level at the worst height.`,
        figures: [
          ...facts.figure(facts.shade, "lift.cord-stiffness"),
          ...facts.figure(facts.shade, "lift.level"),
        ],
        reason: "The longest cord stretches most. Level the hem half raised, with its own weight on it.",
        cite: cite("geometry", "stretch of each cord T·l/(EA)"),
      };
    },
  },
];
