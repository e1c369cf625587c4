import { cite } from "../../sources/index.ts";
import { fineText } from "../../units/index.ts";
import type { CauseOf } from "../cause.ts";
import { findingsAs, hasFinding } from "../from-findings.ts";

/** From here on the numbers of a shade point to its pull, its weight or its spring: our choice, all of them. */
const HARD_PULL_N = 15;
const HARD_PULL_TIMES_WEIGHT = 1.5;
const HEAVY_KG = 3;
const OFF_BALANCE_N = 4;

export const LOCK_CAUSES: readonly CauseOf[] = [
  {
    symptoms: ["lock-jams", "lock-slips"],
    judge: (facts) => {
      const { lock, cord } = facts;
      if (lock === undefined) return undefined;
      const gap = lock.endGapMm;
      const thin =
        (gap !== undefined && cord.diameterMm <= gap) ||
        (lock.cordMinMm !== undefined && cord.diameterMm < lock.cordMinMm);
      const inner = hasFinding(facts, "lift.inner-slots-only");
      return {
        id: "cord-thinner-than-gap",
        title: "The cord is thinner than the gap beside the roller",
        evidence: thin ? "points-to-it" : gap === undefined ? "cannot-tell" : "speaks-against",
        why: `The cord is ${fineText(cord.diameterMm)}; ${
          gap === undefined
            ? `the gap at the roller’s end of “${lock.name}” was not measured`
            : `the gap at the roller’s end of “${lock.name}” is ${fineText(gap)}`
        }${lock.cordMinMm === undefined ? "" : `, and it is made for ${fineText(lock.cordMinMm)} and thicker`}.`,
        test: "Shine a light into the lock: a jammed cord lies between the end of the roller and the housing, not over the roller. Try the gap with a feeler gauge.",
        cure: inner
          ? "This plan threads it through the inner slots only: see that no cord lies in an outer one. Or take a thicker cord."
          : "Thread thin cord through the inner slots only, or take a thicker cord.",
        remedies: findingsAs(facts, ["lift.end-gap", "lift.cord-diameter", "lift.too-many-cords"]),
        cite: cite("lock-instructions", "thin cord wedges between roller and housing"),
      };
    },
  },
  {
    symptoms: ["lock-jams", "hard-to-raise"],
    judge: ({ shade }) => {
      if (shade.lift.takeUp !== "lock") return undefined;
      const { slots, seat } = shade.lift;
      const full = Math.max(0, ...slots.map(({ cords }) => cords.length));
      return {
        id: "cords-cross",
        title: "Two cords cross in or before the lock",
        evidence: "cannot-tell",
        why: `Drawn, none crosses: ${full} ${full === 1 ? "cord" : "cords"} at most in a slot, the lock ${seat.kind === "between" ? "between the last two eyes" : "outside the last eye"}. Threaded out of order they rub and wedge.`,
        test: "Pull one cord at a time below the lock: the one beside it must not move.",
        cure: "Take the lock down, lay the cords side by side in the order of the plan, and thread them anew.",
        remedies: [],
        cite: cite("lock-instructions", "threading"),
      };
    },
  },
  {
    symptoms: ["lock-slips"],
    judge: ({ shade, lock }) =>
      shade.lift.takeUp !== "lock" || lock === undefined
        ? undefined
        : {
            id: "lock-reversed",
            title: "The lock is the wrong way round",
            evidence: "cannot-tell",
            why: `On this shade the toothed roller and the finished side of the wires lie towards the ${shade.lift.seat.facing}, seen from the room.`,
            test: "Swing the cords towards the middle of the shade: they must run free. Towards the outside they must catch.",
            cure: "Turn the lock end for end on the board, and thread it anew.",
            remedies: [],
            cite: cite("lock-instructions", "metal roller to the outer edge"),
          },
  },
  {
    symptoms: ["lock-slips", "will-not-stay"],
    judge: (facts) => {
      const { shade, lock, force } = facts;
      if (shade.lift.takeUp !== "lock" || lock === undefined) return undefined;
      const over = hasFinding(facts, "lift.too-many-cords");
      return {
        id: "lock-overloaded",
        title: "More cords or weight than the lock holds",
        evidence: over ? "points-to-it" : "cannot-tell",
        why: `“${lock.name}” takes ${lock.cordsMax} cords at most, and this shade has ${shade.lift.cords.length}; together they carry ${force(shade.lift.heldN)}.`,
        test: "Hold most of the cords by hand: does the lock now keep the rest?",
        cure: "Take a lock with more slots, or wind the tail round a cleat out of a child’s reach.",
        remedies: findingsAs(facts, ["lift.too-many-cords"]),
        cite: cite("lock-instructions", "capacity of a lock"),
        figures: ["lift.held"],
      };
    },
  },
  {
    symptoms: ["lock-slips", "will-not-stay"],
    judge: (facts) =>
      facts.lock === undefined
        ? undefined
        : {
            id: "mixed-cords",
            title: "Cords of different diameters, or worn teeth",
            evidence: "cannot-tell",
            why: `All cords of this shade are to be ${fineText(facts.cord.diameterMm)}: the roller presses on the thickest, and thinner ones slip beside it.`,
            test: "Measure a few cords by ten turns round a pencil, side by side. Look at the teeth with a glass.",
            cure: "Change the odd cords, or the lock where its teeth are worn.",
            remedies: [],
            cite: cite("lock-instructions", "cords of one size"),
          },
  },
  {
    symptoms: ["lock-slips", "will-not-stay"],
    judge: ({ shade, force }) => {
      if (shade.lift.poweredBy !== "spring") return undefined;
      const { bandN, massMinKg } = shade.lift;
      return {
        id: "spring-off-balance",
        title: "The spring does not match the weight",
        evidence: bandN > OFF_BALANCE_N ? "points-to-it" : "cannot-tell",
        why: `Lowered and raised the weight on the cords differs: friction must hold ${force(bandN)} either way${massMinKg === undefined ? "" : ", and a shade lighter than the spring is made for creeps up"}.`,
        test: "Creeps up lowered: the spring is too strong. Creeps down raised: it is too weak. Both: friction is too little for its range.",
        cure: "Set the spring’s turns as its maker says; change the bar’s weight; or take another spring.",
        remedies: [],
        cite: cite("geometry", "an even spring set half way between the two torques"),
        figures: ["lift.spring-band"],
      };
    },
  },
  {
    symptoms: ["hard-to-raise"],
    judge: (facts) => {
      const { shade, force } = facts;
      const { pullN, heldN, course } = shade.lift;
      if (shade.lift.poweredBy === "motor") return undefined;
      const costs = course.shares.filter(({ what }) => what !== "weight");
      const most = costs.reduce((sum, { addsN }) => sum + addsN, 0);
      return {
        id: "eyes-cost",
        title: shade.lift.takeUp === "lock" ? "Friction at the eyes and the lock" : "Friction at the eyes",
        evidence:
          pullN > HARD_PULL_TIMES_WEIGHT * heldN && pullN > HARD_PULL_N ? "points-to-it" : "cannot-tell",
        why:
          costs.length === 0
            ? `The hand pulls ${force(pullN)} for a weight of ${force(heldN)}.`
            : `Of ${force(pullN)} at the hand, ${force(most)} go into ${shade.lift.takeUp === "lock" ? "eyes and lock" : "the eyes"}${course.withPulleysN === undefined ? "" : `; with pulleys it would be ${force(course.withPulleysN)}`}.`,
        test: "Lift the bar by hand while somebody pulls the cords: if it stays hard, it is friction; if it turns easy, it is weight.",
        cure: "Take pulleys in place of the eyes, and wax nothing: wax makes the lock slip.",
        remedies: findingsAs(facts, ["lift.hard-pull"]),
        cite: cite("capstan"),
        figures: ["lift.pull", "lift.held"],
      };
    },
  },
  {
    symptoms: ["hard-to-raise"],
    judge: (facts) => {
      const { shade, force } = facts;
      const heavy = shade.mass.totalKg > HEAVY_KG;
      return {
        id: "too-heavy",
        title: "The shade is heavy",
        evidence: heavy ? "points-to-it" : "speaks-against",
        why: `Raised, ${force(shade.lift.heldN)} hang on ${shade.lift.cords.length} cords.`,
        test: "Weigh it on a luggage scale before it is hung: the plan’s weight should come within a tenth.",
        cure: "A lighter bar or lining, two shades side by side, or a lift tube.",
        remedies: findingsAs(facts, ["lift.hard-pull", "lift.drive-overloaded"]),
        cite: cite("geometry"),
        figures: ["lift.held"],
      };
    },
  },
];
