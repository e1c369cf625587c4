import type { Step } from "../shade-plan/index.ts";
import type { Bench } from "./bench.ts";
import { controlSteps } from "./hang-control.ts";
import { HOLD_BOARD, WALL } from "./hazards.ts";
import { counted, listed, sentences } from "./wording.ts";

/** Board up, shade down, and whatever the hand works made ready. */
export function hangSteps(bench: Bench): Step[] {
  return [
    wall(bench),
    ...(bench.board.fixing === "brackets" ? [brackets(bench), ontoBrackets(bench)] : [screwUp(bench)]),
    ...controlSteps(bench),
  ];
}

const SUBSTRATE_TEXT = {
  timber: "The board goes into timber: find its edges, and keep the screws in the middle of it.",
  masonry: "The board goes into masonry: drill for plugs that suit it, and not into a joint.",
  "hollow-wall":
    "The board goes on a hollow wall: find a stud, or use anchors whose own instructions allow the load.",
  unknown:
    "What is behind the plaster is not known. Find out before you drill: no stud and no lintel is taken for granted here.",
} as const;

function wall({ resolved, lift, board, len }: Bench): Step {
  const { count, lengthMm } = board.screws;
  return {
    id: "hang-wall",
    chapter: "hang",
    title: "See what you fix into",
    text: sentences(
      SUBSTRATE_TEXT[resolved.making.board.substrate],
      `This plan counts on ${counted(count, "screw")} of ${len(lengthMm)}.`,
      lift.cords.length > 0 &&
        `They carry the shade and every pull on ${lift.takeUp === "lock" ? "the cords" : "it"}.`,
    ),
    caution: WALL,
    sheet: "board",
  };
}

function brackets(bench: Bench): Step {
  const { resolved, board, size, len, about } = bench;
  const at = listed(board.brackets.map((bracket) => len(bracket.xMm - board.leftMm)));
  const height =
    resolved.mount === "outside"
      ? `Draw a level line ${len(resolved.making.mount.overlapAboveMm)} above the opening for the top of the board.`
      : "Draw a level line for the top of the board.";
  return {
    id: "hang-brackets",
    chapter: "hang",
    title: "Fix the brackets",
    text: sentences(
      height,
      size.topAboveFloorMm !== undefined && `It is ${len(size.topAboveFloorMm)} above the floor.`,
      `Mark the board’s left end on it, and from there ${counted(board.brackets.length, "bracket")} at ${at}. The brackets carry the board from below: their upper faces come ${len(board.thicknessMm)} under the line.`,
    ),
    check: `A spirit level laid over all brackets shows no more than ${about("level")} from end to end.`,
    caution: WALL,
    sheet: "board",
  };
}

/** Slack cord slips over the edge of a spool, and then jams beside it. */
function letDown({ lift }: Bench): string {
  return lift.takeUp === "lock"
    ? "Then untie the shade and let it down."
    : "Then untie the shade and let it down slowly, and see that no slack cord has slipped over the edge of its spool.";
}

function ontoBrackets(bench: Bench): Step {
  return {
    id: "hang-board",
    chapter: "hang",
    title: "Set the board on the brackets",
    text: `Fold the shade up, tie it loosely with a strip of cloth and carry it up with the board. Set the board on the brackets against the wall and put a screw through each bracket into its underside. ${letDown(bench)}`,
    check: "Pull down hard on the board at both ends: nothing moves.",
    caution: HOLD_BOARD,
    sheet: "side",
  };
}

function screwUp(bench: Bench): Step {
  const { board, len } = bench;
  const at = listed(board.brackets.map((bracket) => len(bracket.xMm - board.leftMm)));
  return {
    id: "hang-board",
    chapter: "hang",
    title: "Screw the board up",
    text: `Fold the shade up, tie it loosely with a strip of cloth and carry it up with the board. Hold the board against the head of the opening, the same gap at either end, and put a screw of ${len(board.screws.lengthMm)} up through each hole, at ${at} from its left end: first one in the middle, then the others. ${letDown(bench)}`,
    check: "Pull down hard on the board at both ends: nothing moves, and no gap opens above it.",
    caution: HOLD_BOARD,
    sheet: "side",
  };
}
