import { fromBoardEndMm, headYMm, type Step } from "../shade-plan/index.ts";
import { counted, listed } from "../words/index.ts";
import { type Bench, isTubeBench } from "./bench.ts";
import { controlSteps } from "./hang-control.ts";
import { HOLD_BOARD, WALL } from "./hazards.ts";
import { sentences } from "./wording.ts";

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
        `They carry the shade and every pull on ${lift.takeUp === "tube" ? "it" : "the cords"}.`,
    ),
    caution: WALL,
    sheet: "board",
  };
}

function brackets(bench: Bench): Step {
  const { board, size, len, about } = bench;
  const at = listed(placesMm(bench).map(len));
  const level = size.head === undefined || isTubeBench(bench);
  return {
    id: "hang-brackets",
    chapter: "hang",
    title: "Fix the brackets",
    brief: `upper faces ${len(board.thicknessMm)} under the line`,
    text: sentences(
      ...(level ? levelLine(bench) : headLine(bench)),
      `Mark the board’s left end on it, and from there ${counted(board.brackets.length, "bracket")} at ${at}. The brackets carry the board from below: their upper faces come ${len(board.thicknessMm)} under the line.`,
    ),
    check: level
      ? `A spirit level laid over all brackets shows no more than ${about("level")} from end to end.`
      : "The board laid on all brackets touches each, and its upper edge follows the line.",
    caution: WALL,
    sheet: "board",
  };
}

function levelLine({ resolved, size, len }: Bench): (string | false)[] {
  return [
    resolved.mount === "outside"
      ? `Draw a level line ${len(resolved.making.mount.overlapAboveMm)} above the opening for the top of the board.`
      : "Draw a level line for the top of the board.",
    size.topAboveFloorMm !== undefined && `It is ${len(size.topAboveFloorMm)} above the floor.`,
  ];
}

/** Under a head that is not level the line falls as the head does. */
function headLine({ board, size, len }: Bench): (string | false)[] {
  const { head, topAboveFloorMm } = size;
  const below = (xMm: number) => headYMm(size, xMm);
  const [left, right] = [below(board.leftMm), below(board.leftMm + board.lengthMm)];
  if (head?.kind === "arched") {
    return [
      `Draw the line of the board’s top on the wall by the template of the head: its ends lie ${len(Math.max(left, right))} below its highest point.`,
      topAboveFloorMm !== undefined && `That is ${len(topAboveFloorMm)} above the floor.`,
    ];
  }
  const [low, high] = left > right ? ["left", "right"] : ["right", "left"];
  return [
    `Draw the sloping line of the board’s top on the wall, its ${low} end ${len(Math.abs(left - right))} lower than its ${high} end.`,
    topAboveFloorMm !== undefined &&
      `At the left end it is ${len(topAboveFloorMm - left)} above the floor, at the right end ${len(topAboveFloorMm - right)}.`,
  ];
}

/** Slack cord slips over the edge of a spool, and then jams beside it. */
function letDown({ lift }: Bench): string {
  return lift.takeUp !== "tube"
    ? "Then untie the shade and let it down."
    : "Then untie the shade and let it down slowly, and see that no slack cord has slipped over the edge of its spool.";
}

/** Brackets or screws from the left end of the board. */
function placesMm(bench: Bench): number[] {
  return bench.board.brackets.map((bracket) => fromBoardEndMm(bench, bracket.xMm));
}

function ontoBrackets(bench: Bench): Step {
  return {
    id: "hang-board",
    chapter: "hang",
    action: { kind: "hang-board", on: "brackets", placesMm: placesMm(bench), boardMm: bench.board.cutMm },
    title: "Set the board on the brackets",
    text: `Fold the shade up, tie it loosely with a strip of cloth and carry it up with the board. Set the board on the brackets against the wall and put a screw through each bracket into its underside. ${letDown(bench)}`,
    check: "Pull down hard on the board at both ends: nothing moves.",
    caution: HOLD_BOARD,
    sheet: "side",
  };
}

function screwUp(bench: Bench): Step {
  const { board, len } = bench;
  const at = listed(placesMm(bench).map(len));
  return {
    id: "hang-board",
    chapter: "hang",
    action: { kind: "hang-board", on: "screws", placesMm: placesMm(bench), boardMm: board.cutMm },
    title: "Screw the board up",
    brief: `screws of ${len(board.screws.lengthMm)}`,
    text: `Fold the shade up, tie it loosely with a strip of cloth and carry it up with the board. Hold the board against the head of the opening, the same gap at either end, and put a screw of ${len(board.screws.lengthMm)} up through each hole, at ${at} from its left end: first one in the middle, then the others. ${letDown(bench)}`,
    check: "Pull down hard on the board at both ends: nothing moves, and no gap opens above it.",
    caution: HOLD_BOARD,
    sheet: "side",
  };
}
