import { QUARTER_TURN_RAD } from "../job/index.ts";
import { capstanRatio, frictionFromPair } from "../mechanics/index.ts";

/** How to measure one property of a part at the bench, with what lies about in a sewing room. */
export interface PartTest {
  id: string;
  title: string;
  /** Kinds of part that it belongs to. */
  of: readonly ("locks" | "cords" | "eyes")[];
  steps: readonly string[];
  /** What to enter, and where. */
  enter: string;
}

export const PART_TESTS: readonly PartTest[] = [
  {
    id: "cord-diameter",
    title: "Diameter of a cord",
    of: ["cords"],
    steps: [
      "Wind twenty turns round a pencil, side by side, each touching the next, none on top of another.",
      "Measure the width of all turns together with a steel rule.",
      "Divide by twenty.",
    ],
    enter: "Diameter of the cord.",
  },
  {
    id: "cord-stretch",
    title: "Stretch of a cord",
    of: ["cords"],
    steps: [
      "Hang two metres of cord from a nail, a loop at its lower end, and mark its length under its own weight.",
      "Hang one kilogram on it for a minute (a litre of water and its bottle come near), and mark again.",
      "Divide what it grew by by two metres.",
    ],
    enter: "Stretch under 10 N, as a share.",
  },
  {
    id: "end-gap",
    title: "Gap at the end of a lock’s roller",
    of: ["locks"],
    steps: [
      "Push the roller to one side with a thumb.",
      "Try the leaves of a feeler gauge, or slips of card that you have measured, between its other end and the housing.",
      "The thickest that goes in is the gap.",
    ],
    enter: "Gap at the roller’s end. A cord no thicker than it can slip in and jam.",
  },
  {
    id: "hold",
    title: "Does the lock hold?",
    of: ["locks", "cords"],
    steps: [
      "Screw the lock to a scrap of board and clamp the board to a table, away from your feet.",
      "Thread one cord, lock it, and hook a luggage scale into its lower end.",
      "Pull slowly until it slips, and read the scale; do it ten times with the cord moved on each time.",
    ],
    enter:
      "Compare the least reading with the weight of the shade over its number of cords: it should hold twice as much.",
  },
  {
    id: "eye-friction",
    title: "Friction of a cord on an eye",
    of: ["eyes", "cords"],
    steps: [
      "Lead the cord over the eye with a quarter turn, a known weight on one end, the luggage scale on the other.",
      "Pull slowly and evenly: read what just raises the weight.",
      "Let it down slowly: read what just lets it sink.",
    ],
    enter:
      "Friction of cord on it, worked out below from the two readings; for a pulley the share of the pull.",
  },
];

/** What the two readings of a quarter turn come to: friction of an eye, or share that a pulley passes on. */
export function fromTwoReadings(
  raises: number,
  lowers: number,
): { friction: number; pulleyShare: number } | undefined {
  if (!(lowers > 0) || !(raises >= lowers) || !Number.isFinite(raises)) return undefined;
  const friction = frictionFromPair(raises, lowers, QUARTER_TURN_RAD);
  return { friction, pulleyShare: 1 / capstanRatio(friction, QUARTER_TURN_RAD) };
}
