import type { Finding, Remedy } from "../figures/index.ts";
import { partChoice } from "../job/index.ts";
import type { MountedBoard } from "../shade-plan/index.ts";
import { cite, sourced } from "../sources/index.ts";
import { fineText } from "../units/index.ts";
import { counted, listed } from "../words/index.ts";
import type { BoardInput, BoardShade } from "./board-input.ts";
import { type CordWay, cordWays, passesOver } from "./cord-ways.ts";

/** Down from the board to the lowest of a bracket's arm and the screw in it, with a little to spare. */
const ARM_MM = sourced(6, "mm", cite("our-choice", "2 mm of arm, 3 mm of screw head, 1 mm clear"));
/** A screw from below with its head and a little beside. */
const HEAD_MM = sourced(5, "mm", cite("our-choice", "half of a screw head, and 1 mm clear"));
/** Wood kept to the edge of the board. */
const EDGE_MM = 6;

/** A bracket or a screw as cords see it from below. */
interface Fixing {
  number: number;
  xMm: number;
}

/** Places across the board for screws from below, as shares of its depth, in the order in which they are tried. */
const SCREW_SHARES = [1 / 2, 1 / 4, 3 / 4];

/** Share of the board's depth at which its screws are clear of every cord; in its middle where no place is. */
export function clearScrewShare({ shade, lift }: BoardInput, fixings: readonly Fixing[]): number {
  const ways = cordWays(lift, shade.eye);
  const { depthMm } = shade.board;
  const found = SCREW_SHARES.filter((share) => share === 1 / 2 || depthMm / 4 >= EDGE_MM).find((share) =>
    fixings.every((fixing) => ways.every((way) => !passesOver(way, screwPatch(fixing, share * depthMm)))),
  );
  return found ?? 1 / 2;
}

function screwPatch({ xMm }: Fixing, zMm: number) {
  const half = HEAD_MM.value;
  return { fromMm: xMm - half, toMm: xMm + half, nearMm: zMm - half, farMm: zMm + half };
}

/** Those of the cords that a fixing stands in the way of. */
function cordsInTheWay(
  ways: readonly CordWay[],
  board: Pick<MountedBoard, "fixing" | "screwsZMm" | "depthMm">,
  fixing: Fixing,
  widthMm: number,
): CordWay[] {
  if (board.fixing === "screwed-up") {
    const patch = screwPatch(fixing, board.screwsZMm ?? board.depthMm / 2);
    return ways.filter((way) => passesOver(way, patch));
  }
  const patch = {
    fromMm: fixing.xMm - widthMm / 2,
    toMm: fixing.xMm + widthMm / 2,
    nearMm: 0,
    farMm: board.depthMm,
  };
  return ways.filter((way) => way.belowMm < ARM_MM.value && passesOver(way, patch));
}

/** Do brackets and screws keep out of the way of every cord along the board? */
export function judgeCordWays(input: BoardInput, board: MountedBoard, widthMm: number): Finding[] {
  const { shade, lift } = input;
  const ways = cordWays(lift, shade.eye);
  const met = board.brackets.flatMap((fixing) => {
    const cords = cordsInTheWay(ways, board, fixing, widthMm);
    return cords.length === 0 ? [] : [{ fixing, cords }];
  });
  const [first] = met;
  if (first === undefined) return [];
  const bracket = board.fixing === "brackets";
  const what = bracket ? "bracket" : "screw";
  const names = listed(first.cords.map(({ name }) => name));
  const more = met.length > 1 ? `, and ${counted(met.length - 1, `more ${what}`)} like it` : "";
  const why = bracket
    ? ` Cords run ${fineText(Math.max(0, Math.min(...first.cords.map(({ belowMm }) => belowMm))))} below the board, its arm and screw reach ${fineText(ARM_MM.value)} down.`
    : " No place across the board is clear of them all.";
  return [
    {
      stage: "board",
      shadeId: shade.shadeId,
      id: "board.fixing-in-cord-way",
      severity: "fix",
      path: `${shade.path}/shade/making/${bracket ? "lift/eye" : "board/section"}`,
      text: `${bracket ? "Bracket" : "Screw"} ${first.fixing.number} stands in the way of ${names}${more}: there the cord rubs and frays.${why}`,
      cite: cite("geometry", "ways of the cords and edges of the fixings, seen from below and from the room"),
      cases: met.length,
      remedies: bracket ? lowerEyes(shade) : deeperBoards(shade),
    },
  ];
}

/** Larger eyes hold the cords farther from the board. */
function lowerEyes(shade: BoardShade): Remedy[] {
  return shade.parts.eyes
    .filter(({ outsideDiameterMm }) => outsideDiameterMm > shade.eye.outsideDiameterMm)
    .sort((a, b) => a.outsideDiameterMm - b.outsideDiameterMm)
    .slice(0, 2)
    .map(partChoice(shade, "lift", "eye"));
}

function deeperBoards(shade: BoardShade): Remedy[] {
  return shade.parts.boards
    .filter(({ depthMm }) => depthMm > shade.board.depthMm)
    .sort((a, b) => a.depthMm - b.depthMm)
    .slice(0, 2)
    .map(partChoice(shade, "board", "section"));
}
