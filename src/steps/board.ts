import { fromBoardEndMm, type LockSeat, type Step } from "../shade-plan/index.ts";
import { counted, listed } from "../words/index.ts";
import {
  type Bench,
  type CleatBench,
  isCleatBench,
  isLockBench,
  isTubeBench,
  type LockBench,
  type TubeBench,
} from "./bench.ts";
import { DRILL, SAW, STAPLER } from "./hazards.ts";
import { placed, sentences } from "./wording.ts";

/** From a length of wood to a board with the shade on it; lock or tube wait for their cords. */
export function boardSteps(bench: Bench): Step[] {
  return [
    saw(bench),
    fixingHoles(bench),
    ...cover(bench),
    ...(isLockBench(bench) ? [eyes(bench), lockHoles(bench)] : []),
    ...(isCleatBench(bench) ? [eyes(bench), ...lastEye(bench)] : []),
    ...(isTubeBench(bench) ? [tubeHoles(bench)] : []),
    ...returnPieces(bench),
    attach(bench),
    ...dustStrip(bench),
  ];
}

function saw({ board, len }: Bench): Step {
  return {
    id: "board-saw",
    chapter: "board",
    title: "Saw the board",
    text: `Saw the board, ${board.sectionName}, to ${len(board.cutMm)}, ends ${board.cutMm > board.lengthMm ? "upright to the slope" : "square"}, and sand the edges that the cloth will lie on.`,
    check: `It is ${len(board.depthMm)} from front to back and ${len(board.thicknessMm)} thick.`,
    caution: SAW,
    sheet: "board",
    figures: ["measure.board-length"],
  };
}

/** Places on the board are measured from its left end, seen from the room. */
function fromEnd(bench: Bench, xMm: number): string {
  return bench.len(fromBoardEndMm(bench, xMm));
}

/** An impossible shade still has steps; whoever reads them must not drill by them. */
function unfit({ board }: Bench, xsMm: readonly number[]): string | undefined {
  const fits = xsMm.every((xMm) => xMm >= board.leftMm && xMm <= board.leftMm + board.lengthMm);
  return fits ? undefined : DOES_NOT_FIT;
}

const PARTS: Record<Bench["lift"]["takeUp"], string> = {
  lock: "an eye or the lock",
  cleat: "an eye",
  tube: "a spool, a support or the drive",
};

const DOES_NOT_FIT = "Not all of this fits on the board: answer the findings of the plan before you drill.";

function fixingHoles(bench: Bench): Step {
  const { board, len } = bench;
  const at = listed(board.brackets.map((bracket) => fromEnd(bench, bracket.xMm)));
  const brackets = board.fixing === "brackets";
  const across =
    board.screwsZMm === undefined
      ? "midway between front and back"
      : `${len(board.screwsZMm)} from the wall edge, ${isTubeBench(bench) ? "behind the tube to come" : "beside the cords to come"}`;
  const parts = PARTS[bench.lift.takeUp];
  return {
    id: "board-fixing",
    chapter: "board",
    title: brackets ? "Mark where the brackets come" : "Drill for the fixing screws",
    brief: `${at} from the left end`,
    text: brackets
      ? `Lay the board underside up, its wall edge towards you: its left end, seen from the room, is then at your left. From that end mark the middle of ${counted(board.brackets.length, "bracket")} at ${at}, and drill a starting hole for each bracket’s own screw.`
      : `Lay the board underside up, its wall edge towards you: its left end, seen from the room, is then at your left. From that end drill ${counted(board.brackets.length, "hole")} right through, ${across}, at ${at}. A screw must slide through without biting.`,
    check: brackets ? `No bracket comes where ${parts} will be.` : `No hole comes where ${parts} will be.`,
    caution: DRILL,
    sheet: "board",
  };
}

function cover({ cloth, len, about, aboutMm }: Bench): Step[] {
  const strip = cloth.trims.find(({ id }) => id === "board-cover");
  if (strip === undefined) return [];
  return [
    {
      id: "board-cover",
      chapter: "board",
      action: {
        kind: "cover-board",
        widthMm: strip.widthMm,
        lengthMm: strip.lengthMm,
        turnMm: aboutMm("coverTurn"),
      },
      title: "Cover the board",
      brief: `cover ${len(strip.widthMm)} × ${len(strip.lengthMm)} · ${about("coverTurn")} turned under`,
      text: sentences(
        `Take the cover, ${len(strip.widthMm)} by ${len(strip.lengthMm)} of ${strip.clothName}.`,
        strip.count > 1 &&
          `It is in ${strip.count} pieces: sew them end to end, or let them meet on the board.`,
        `Wrap the board in it like a parcel, the free edge turned under by ${about("coverTurn")} on the top, ends folded flat, and staple it on the top.`,
      ),
      check: "The front edge and the underside are smooth, without a staple.",
      caution: STAPLER,
      sheet: "board",
      figures: ["cloth.cover-width", "cloth.cover-length"],
    },
  ];
}

function eyes(bench: Bench): Step {
  const { board, resolved, len, existing } = bench;
  const zMm = board.eyes[0]?.zMm ?? board.depthMm / 2;
  const all = board.eyes.map((eye, i) => ({ ...eye, number: i + 1 }));
  // Of a shade that hangs already those above its own columns are there.
  const isPart = existing !== undefined && existing.takes.eyes < all.length;
  const put = isPart ? all.filter(({ number }) => existing.newColumns.includes(number)) : all;
  return {
    id: "board-eyes",
    chapter: "board",
    action: {
      kind: "set-eye",
      count: put.length,
      fromWallMm: zMm,
      placesMm: put.map((eye) => fromBoardEndMm(bench, eye.xMm)),
      boardMm: board.cutMm,
    },
    title: `Screw in ${counted(put.length, "eye")}`,
    text: sentences(
      unfit(
        bench,
        put.map((eye) => eye.xMm),
      ),
      `Underside up, wall edge towards you. Mark ${len(zMm)} from the wall edge, and from the left end ${placed(
        "eye",
        put.map((eye) => ({ number: eye.number, at: fromEnd(bench, eye.xMm) })),
      )}: one above each ${isPart ? "added column" : "column"}.`,
      `Drill a starting hole through the cover for each, and screw the eye, ${resolved.eye.name}, in until its ring stands across the board: a cord that runs along the board then passes through it.`,
    ),
    check: "A cord laid along the board runs straight through all of them.",
    caution: DRILL,
    sheet: "board",
  };
}

/** The eye that turns all cords down, where it has a place of its own. */
function lastEye(bench: CleatBench): Step[] {
  const { lift, len } = bench;
  const { turn } = lift;
  if (turn.column !== undefined) {
    return [
      {
        id: "board-last-eye",
        chapter: "board",
        title: "See to the last eye",
        text: `All cords turn down over the eye above column ${turn.column}, the last on the ${lift.controlSide}, which is ${turn.name}: it carries its own cord, and the pull of all of them besides. Screw it in as deep as it goes.`,
        check: "Pulled hard straight down, and towards the other eyes, it does not move.",
        sheet: "board",
      },
    ];
  }
  return [
    {
      id: "board-last-eye",
      chapter: "board",
      title: "Screw in the last eye",
      brief: `${fromEnd(bench, turn.xMm)} from the left end · ${len(turn.zMm)} from the wall edge`,
      text: sentences(
        unfit(bench, [turn.xMm]),
        `All cords turn down over one more eye, ${turn.name}, near the ${lift.controlSide} end: mark it ${fromEnd(bench, turn.xMm)} from the left end, ${len(turn.zMm)} from the wall edge.`,
        "Drill its starting hole as deep as its thread is long, so that the wood does not split so near the end, and screw it in, its ring across the board like the others. It bears the pull of all the cords.",
      ),
      check: "Pulled hard straight down, and towards the other eyes, it does not move.",
      caution: DRILL,
      sheet: "board",
    },
  ];
}

const SEAT_WHY: Record<LockSeat["chosenFor"], string> = {
  reach: "as near to the edge as it clears what is there, so that a hand reaches the cords round the cloth",
  pull: "farther in than a hand would wish, since the cords pull easier there",
  hold: "farther from the eye than a hand would wish, so that the cords come in level and the lock holds them and lets them go",
  maker: "where you set it",
};

function lockHoles(bench: LockBench): Step {
  const { lift, len } = bench;
  const { seat } = lift;
  const screws = placed(
    "screw",
    seat.screwsMm.map((screw, i) => ({
      number: i + 1,
      at: `${fromEnd(bench, screw.xMm)} from the left end, ${len(screw.zMm)} from the wall edge`,
    })),
  );
  const where =
    seat.kind === "between" ? "between the last two eyes on the control side" : "outside the last eye";
  return {
    id: "board-lock",
    chapter: "board",
    title: "Mark the place of the lock",
    brief: `middle ${fromEnd(bench, seat.xMm)}, screws ${listed(seat.screwsMm.map(({ xMm }) => fromEnd(bench, xMm)))} from the left end`,
    text: sentences(
      seat.forced
        ? DOES_NOT_FIT
        : unfit(
            bench,
            seat.screwsMm.map((screw) => screw.xMm),
          ),
      `The lock, ${lift.lockName}, sits ${where}, its middle ${fromEnd(bench, seat.xMm)} from the left end of the board: ${SEAT_WHY[seat.chosenFor]}.`,
      `Drill starting holes for its screws: ${screws}.`,
      "Do not screw it on yet. It is threaded in the hand first.",
    ),
    check: `Held in its place it is clear of every eye, and its toothed roller and its smooth crown look outwards, to the ${seat.facing} seen from the room. On the other hand both look the other way.`,
    caution: DRILL,
    sheet: "board",
  };
}

function tubeHoles(bench: TubeBench): Step {
  const { lift, len } = bench;
  const { drive, supports, tube } = lift;
  const xsMm = [...drive.screwsMm.map((screw) => screw.xMm), ...supports.map((one) => one.xMm)];
  return {
    id: "board-tube",
    chapter: "board",
    title: "Mark the places of drive and supports",
    brief: [
      `drive at ${fromEnd(bench, drive.xMm)}`,
      ...supports.map(({ number, xMm }) => `support ${number} at ${fromEnd(bench, xMm)}`),
    ].join(" · "),
    text: sentences(
      drive.forced ? DOES_NOT_FIT : unfit(bench, xsMm),
      `Underside up, wall edge towards you. The tube runs along the board ${len(tube.zMm)} from the wall edge.`,
      `Mark from the left end the middle of the drive, ${drive.name}, at ${fromEnd(bench, drive.xMm)}${
        supports.length === 0
          ? ""
          : `, and ${placed(
              "support",
              supports.map((one) => ({ number: one.number, at: fromEnd(bench, one.xMm) })),
            )}`
      }.`,
      "Hold each part in its place and drill a starting hole for each of its screws. Do not screw them on yet.",
    ),
    check: "A straight edge laid along the marks runs through the middle of all of them.",
    caution: DRILL,
    sheet: "board",
    figures: ["rig.tube-axis"],
  };
}

function attach({ board, form, size, len, about, stapled, boardAllowanceMm, wrapMm }: Bench): Step {
  const centred =
    board.leftMm > 0.5
      ? `The shade reaches ${len(board.leftMm)} beyond the board at each end.`
      : "Both ends are level.";
  const beyond = board.leftMm > 0.5 ? ` · ${len(board.leftMm)} beyond each end` : "";
  return {
    id: "board-attach",
    chapter: "board",
    action: { kind: "fix-shade", how: stapled ? "staple" : "hook-and-loop", beyondMm: boardAllowanceMm },
    title: stapled ? "Staple the shade to the board" : "Press the shade to the board",
    ...(stapled ? { brief: `${len(boardAllowanceMm)} over the top${beyond}` } : {}),
    text: stapled
      ? sentences(
          `Lay the top line of the shade on the top front edge of the board, the lining towards the wall. ${centred}`,
          `Bring the ${len(boardAllowanceMm)} beyond the line back over the top and staple it there, first in the middle, then at both ends, then in between.`,
          "Trim what hangs over at the back.",
          wrapMm > 0 &&
            `Fold the ${len(wrapMm)} at each side back round the end of the board, and staple it on the top there, folded flat.`,
        )
      : sentences(
          `Staple the hook half of the tape along the front edge of the board, level with its top. Press the shade on, its upper fold level with the top edge. ${centred}`,
        ),
    check: `From the top front edge of the board to the ${form.swags.length > 0 ? "lowest point of the scallops" : "hem"} it measures ${len(size.finishedLengthMm)} at both sides, within ${about("level")}.`,
    caution: STAPLER,
    sheet: "side",
  };
}

/** Pieces over the ends of the board go on before the shade, which then covers their front edges. */
function returnPieces({ cloth, board, about, len }: Bench): Step[] {
  const piece = cloth.trims.find(({ id }) => id === "board-return");
  if (piece === undefined) return [];
  return [
    {
      id: "board-returns",
      chapter: "board",
      title: "Cover the ends of the board",
      text: sentences(
        `Hem both long edges and the lower edge of each return by ${about("coverTurn")}: it is then as wide as the board is deep, ${len(board.depthMm)}.`,
        "Staple its upper edge on the top of the board, so that it hangs down over the end, its front edge level with the front of the board.",
        "Tack its front edge to the side of the shade by hand, no further down than the return reaches, once the shade is on.",
      ),
      check: "From the side nothing is seen of the board.",
      caution: STAPLER,
      sheet: "board",
      figures: ["cloth.return-width", "cloth.return-length"],
    },
  ];
}

function dustStrip({ cloth, about }: Bench): Step[] {
  const strip = cloth.trims.find(({ id }) => id === "dust-strip");
  if (strip === undefined) return [];
  return [
    {
      id: "board-dust-strip",
      chapter: "board",
      title: "Staple the dust strip on",
      text: sentences(
        `Turn one long edge and both ends of the strip under by ${about("coverTurn")} and sew.`,
        "Staple the raw long edge on the top of the board along its wall edge, so that the strip lies over the gap behind the shade.",
      ),
      check: "Held as it will hang, the board lets no light through between shade and wall.",
      caution: STAPLER,
      sheet: "board",
      figures: ["cloth.dust-strip-width"],
    },
  ];
}
