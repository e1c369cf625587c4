import { askLock } from "../../diagnose/index.ts";
import { fromBoardEndMm } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { fineText, trimmed } from "../../units/index.ts";
import { counted, listed } from "../../words/index.ts";
import type { AnswerFigure } from "../answer-figure.ts";
import type { CardAnswer, QuestionCard } from "../card.ts";
import type { AskedShade, LockedShade } from "../facts.ts";

/** Of a shade that no lock can be planned on there is nothing to say about one. */
const NO_LOCK: CardAnswer = {
  text: "No cord lock can be planned on this shade.",
  figures: [],
  reason: "The question is about cords over a lock.",
  cite: cite("lock-instructions"),
};

function ofLock(answer: (facts: AskedShade, locked: LockedShade) => CardAnswer): QuestionCard["answer"] {
  return (facts) => {
    const locked = facts.locked();
    return locked === undefined ? NO_LOCK : answer(facts, locked);
  };
}

const SIZE = ["widthMm", "columnsApartMm"] as const;

export const LOCK_CARDS: readonly QuestionCard[] = [
  {
    id: "lock-as-eye",
    question: "Can the lock serve as the last eye?",
    also: "screw eye pulley instead of eye leave out fewer eyes edge column straight up into the lock",
    asks: [...SIZE],
    answer: ofLock((facts, locked) => {
      const { lift, grid } = locked;
      const last = lift.controlSide === "left" ? grid.columns[0] : grid.columns.at(-1);
      const apartMm = Math.abs((last?.xMm ?? 0) - lift.seat.xMm);
      return {
        text: `No. Every column keeps an eye of its own, the last one too: ${counted(grid.columns.length, "column")}, ${counted(lift.eyes.length, "eye")}.`,
        figures: [
          { label: "From the lock’s middle to the last column", text: facts.len(apartMm) },
          ...facts.figure(locked, "rig.eye-level"),
          ...facts.figure(locked, "rig.lock-level"),
          ...facts.figure(locked, "rig.entry-climb"),
        ],
        reason:
          "A lock wants its cords level, along the board: over the roller at its end and down between both. A cord that came up to it straight from the rings would rub on the end of the housing, pull its column towards the lock, and hold or let go when it should not. The eye turns the cord; the lock only holds it.",
        cite: cite("lock-instructions", "clear of the last eye, cords entering straight"),
      };
    }),
  },
  {
    id: "which-side-out",
    question: "Which side of the lock faces out?",
    also: "way round direction toothed metal brass roller plastic roller backwards reversed left right hand handed",
    asks: ["widthMm"],
    answer: ofLock((facts, { lift }) => ({
      text: `The toothed roller and the smooth crown of the wires, towards the outside of the shade: here towards the ${lift.seat.facing}, seen from the room.`,
      figures: [
        { label: "Shade worked at the", text: lift.controlSide },
        { label: "Toothed roller towards the", text: lift.seat.facing },
        { label: "Lock’s middle from the left edge", text: facts.len(lift.seat.xMm) },
      ],
      reason:
        "Pulled outwards and down, the cords press the toothed roller against the plain one and it bites; swung towards the middle of the shade they free it. The other way round it would hold when it should let go. The same lock serves either hand: turn it end for end.",
      cite: cite("lock-instructions", "metal roller to the outer edge"),
    })),
  },
  {
    id: "lock-at-the-end",
    question: "Can the lock sit at the very end of the board?",
    also: "edge position where does the lock go how far in from the end place seat outside the last eye",
    asks: [...SIZE],
    answer: ofLock((facts, locked) => {
      const { lift } = locked;
      const { seat } = lift;
      const alongMm = fromBoardEndMm(locked, seat.xMm);
      const fromEndMm = lift.controlSide === "left" ? alongMm : locked.board.lengthMm - alongMm;
      const where =
        seat.kind === "between"
          ? "between the last two eyes"
          : "outside the last eye, where the board has room";
      return {
        text: seat.forced
          ? "There is no clear place for it on this board at all: the findings say what would make one."
          : `Not over the edge or hard against the last eye. Here it sits ${where}, its middle ${facts.len(fromEndMm)} from the ${lift.controlSide} end of the board.`,
        figures: [
          { label: "Middle from the end of the board", text: facts.len(fromEndMm) },
          { label: "Housing, long", text: fineText(lift.housingLengthMm) },
          ...facts.figure(locked, "rig.seat-from"),
          ...facts.figure(locked, "rig.seat-to"),
        ],
        reason:
          "The housing must clear the eye and the board’s end, its screws need wood round them, and the cords need a straight run before the roller. As near to the edge as that allows, the tail hangs where a hand finds it.",
        cite: cite("lock-instructions", "clear of the last eye, cords entering straight"),
      };
    }),
  },
  {
    id: "which-lock",
    question: "Which lock do I need?",
    also: "size slots how many cords capacity choose cord lock",
    asks: [...SIZE, "cordMm"],
    answer: ofLock((facts, locked) => {
      const { lift } = locked;
      const count = lift.cords.length;
      const answers = askLock(count, lift.cordDiameterMm, facts.locks);
      const taking = answers.filter(({ takes }) => takes);
      return {
        text:
          taking.length === 0
            ? `None of the locks at hand takes ${counted(count, "cord")} of ${fineText(lift.cordDiameterMm)}.`
            : `One that takes ${counted(count, "cord")} of ${fineText(lift.cordDiameterMm)}: ${listed(taking.map(({ lock }) => lock.name))}.`,
        figures: [
          { label: "Cords, one a column", text: String(count) },
          ...answers.map(({ lock, takes, remarks }) => ({
            label: lock.name,
            text: takes
              ? `takes them, ${counted(lock.dividerWires + 1, "slot")}`
              : remarks
                  .filter(({ severity }) => severity === "stop")
                  .map(({ text }) => text)
                  .join(" "),
          })),
        ],
        reason:
          "Its wires part the cords into slots, and each slot takes a few at most: more climb on one another and rub. A cord thinner than it is made for wedges beside the roller; a thicker one does not run free. Measure the lock in your hand: figures of the example locks are invented.",
        cite: cite("lock-instructions", "capacity and cord diameters of a lock"),
      };
    }),
  },
  {
    id: "divider-wires",
    question: "May I take the divider wires out of the lock?",
    also: "remove wires dividers slots more cords",
    asks: [...SIZE],
    answer: ofLock((_facts, { lift }) => ({
      text: `No. Take a lock with more slots instead: this one has ${counted(lift.dividerWires, "wire")} and so ${counted(lift.slots.length, "slot")} for ${counted(lift.cords.length, "cord")}.`,
      figures: lift.slots.map((slot) => ({
        label: `Slot ${slot.number} from the wall`,
        text:
          slot.cords.length === 0
            ? slot.usable
              ? "empty"
              : "not for this cord"
            : `cord ${listed(slot.cords.map(String))}`,
      })),
      reason:
        "The wires keep the cords from crossing. Cords that lie over one another are pressed unequally: one holds, the other creeps, and the hem hangs out of level.",
      cite: cite("lock-instructions", "divider wires stay in"),
    })),
  },
  {
    id: "threading-order",
    question: "In which order do I thread the lock?",
    also: "thread string cords through lock from which end slot first last left right",
    asks: [...SIZE],
    answer: ofLock((_facts, { lift }) => ({
      text: `${lift.threading.length === 1 ? "Cord" : "Cords"} ${listed(lift.threading.map(String))}, one at a time, before the lock is screwed on.`,
      figures: lift.threading.flatMap((number): AnswerFigure[] => {
        const cord = lift.cords.find((one) => one.number === number);
        return cord === undefined
          ? []
          : [{ label: `Cord ${number}`, text: `from the ${cord.entersFrom} end into slot ${cord.slot}` }];
      }),
      reason:
        "Held overhead and shaken, the rollers lie apart and a cord drops between them. In this order none crosses another, before the lock or in it. Slot 1 is nearest the wall.",
      cite: cite("lock-instructions", "threading"),
    })),
  },
  {
    id: "cleat-instead",
    question: "Can I use a cleat in place of the lock?",
    also: "no lock without lock figure eight hook gentle on cord heavy shade",
    asks: ["widthMm", "lengthMm"],
    answer: (facts) => {
      const locked = facts.locked();
      const tails = locked?.lift;
      return {
        text: "Yes for the shade: the cords turn down over the last eye and are wound on the cleat. It does not make them less of a hazard: each raised shade has its whole travel in cord at hand.",
        figures: [
          { label: "Travel from lowered to raised", text: facts.len(facts.shade.grid.travelMm) },
          ...(tails === undefined
            ? []
            : [{ label: "Cord below the lock, raised", text: facts.len(tails.tailRaisedMm) }]),
        ],
        reason:
          "A cleat does not bite the cord and holds any weight, but only as long as somebody winds the whole tail each time. Agencies disagree whether a high cleat helps. Where children live or visit, choose a lift without free cords.",
        cite: cite("cleat-disagreement"),
      };
    },
  },
  {
    id: "lock-pull",
    question: "How hard will it be to pull up?",
    also: "heavy effort force pulleys friction eyes weight raise",
    asks: ["widthMm", "lengthMm", "massGsm"],
    answer: (facts) => {
      const { shade } = facts;
      const { lift } = shade;
      const cost = lift.course.shares.filter(({ what }) => what !== "weight");
      const addedN = cost.reduce((sum, { addsN }) => sum + addsN, 0);
      return {
        text:
          lift.poweredBy === "motor"
            ? "A motor raises it: no hand pulls."
            : `At most ${facts.force(lift.pullN)} at the hand, for ${facts.force(lift.heldN)} on the cords.`,
        figures: [
          ...facts.figure(shade, "lift.held"),
          ...facts.figure(shade, "lift.pull"),
          ...(addedN === 0 ? [] : [{ label: "Of that, eyes and lock ask for", text: facts.force(addedN) }]),
          ...facts.figure(shade, "lift.pull-with-pulleys"),
        ],
        reason:
          addedN === 0
            ? "The weight changes with every fold that is gathered; it is greatest when the shade is nearly raised."
            : `Each turn over a fixed eye multiplies the pull by e^(friction × angle): a quarter turn and another are why eyes and lock ask for ${trimmed((100 * addedN) / Math.max(lift.pullN, 1e-9), 0)} % of it. Pulleys in place of eyes take most of that away.`,
        cite: cite("capstan"),
      };
    },
  },
];
