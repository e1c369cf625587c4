import { fromBoardEndMm, type Step } from "../shade-plan/index.ts";
import { forceText } from "../units/index.ts";
import { counted, listed } from "../words/index.ts";
import type { Bench } from "./bench.ts";
import { CORDS_AT_THREADING } from "./hazards.ts";

/** A top that can be let down: a rail sewn in, and cords of its own over a lock at the other end. */
export function railSteps(bench: Bench): Step[] {
  const { lift, len, resolved, board } = bench;
  const { topRail } = lift;
  if (topRail === undefined) return [];
  const { cords, side, railMm, dropMm, seat, lockName } = topRail;
  const eyeZ = topRail.eyes[0]?.zMm ?? 0;
  const holds = forceText(topRail.heldN, resolved.units);
  return [
    {
      id: "string-rail",
      chapter: "string",
      title: "Close the upper edge over its rail",
      text: `Cut the top rail to ${len(railMm)}. Turn the cloth above the top line over it, turn its raw edge under, and sew it down by hand close below the rail. At each column leave a hole in its lower edge, so that the lift cords pass it freely on their way up.`,
      check: "The top line lies along the upper edge of the rail, and every lift cord slides past it.",
    },
    {
      id: "string-rail-eyes",
      chapter: "string",
      title: "Screw the rail’s eyes and lock in",
      text: `Beside the eye of each of columns ${listed(cords.map(({ column }) => String(column)))} screw a second eye into the underside of the board, nearer to the wall: ${len(eyeZ)} from the wall edge. Mark the rail’s own lock, ${lockName}, at the ${side} end, seen from the room: its middle ${len(fromBoardEndMm(bench, seat.xMm))} from the left end of the board, ${len(seat.zMm)} from the wall edge. Thread it in the hand as the first one, then screw it down, its toothed roller and its smooth crown outwards, to the ${side}.`,
      check: "No cord of the rail touches a lift cord between its eye and its lock.",
      sheet: "board",
    },
    {
      id: "string-rail-cords",
      chapter: "string",
      title: `Tie ${counted(cords.length, "rail cord")}`,
      text: `From ${resolved.cord.name} cut ${cords.map(({ column, cutMm }) => `${len(cutMm)} for column ${column}`).join(", ")}. Tie each round the rail at its column, take it up through its eye and along the board to the lock at the ${side} end. Draw the rail up to the board’s underside, ${len(board.thicknessMm)} below its upper edge, and join the tails there. All of the shade hangs on these cords while the lift cords are slack: ${holds}.`,
      check: `Let down, the rail comes ${len(dropMm)} below the board, level; drawn up, it closes the gap at the top.`,
      caution: CORDS_AT_THREADING,
      figures: [...cords.map(({ column }) => `rig.rail-cord-${column}-length`), "rig.rail-held"],
    },
  ];
}
