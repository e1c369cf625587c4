import type { LoopLift, MotorLift, SpringLift, Step, WandLift } from "../shade-plan/index.ts";
import { cordLengthText, forceText, trimmed } from "../units/index.ts";
import { counted } from "../words/index.ts";
import type { Bench, CleatBench, LockBench } from "./bench.ts";
import { cordCaution } from "./cord-caution.ts";
import { CORDS_AT_HANGING, LOOP, LOW_VOLTAGE, MAINS, SPRING, WALL, WAND } from "./hazards.ts";
import { sentences } from "./wording.ts";

/** What the hand works, fixed and tried for the first time. */
export function controlSteps(bench: Bench): Step[] {
  return [...shadeControl(bench), ...railCleat(bench)];
}

function shadeControl(bench: Bench): Step[] {
  const { lift } = bench;
  switch (lift.kind) {
    case "cord-lock": {
      const locked: LockBench = { ...bench, lift };
      return [cleat(locked), tryLock(locked)];
    }
    case "cleat": {
      const cleated: CleatBench = { ...bench, lift };
      return [lastCleat(cleated), tryCleat(cleated)];
    }
    case "spring":
      return [releaseSpring(lift), trySpring(bench)];
    case "tube-wand":
      return [hangWand(bench, lift), tryWand(bench, lift)];
    case "tube-loop":
      return [fixTensioner(bench, lift), tryLoop(bench, lift)];
    case "motor":
      return [connectMotor(lift), tryMotor(bench, lift)];
  }
}

/** The cleat of a shade that hangs already is on its wall, and stays where it is good enough. */
function keepsCleat({ existing }: Bench): boolean {
  return existing !== undefined && !existing.takes.cleat;
}

function cleat(bench: LockBench): Step {
  const { resolved, lift, len } = bench;
  const keeps = keepsCleat(bench);
  return {
    id: "hang-cleat",
    chapter: "hang",
    action: {
      kind: "wind-cleat",
      below: "lock",
      side: lift.controlSide,
      aboveFloorMm: resolved.making.lift.cleatAboveFloorMm,
    },
    title: keeps ? "Try its cleat" : "Fix the cleat",
    brief: `${len(resolved.making.lift.cleatAboveFloorMm)} or more above the floor`,
    text: sentences(
      keeps
        ? `Pull hard at the cleat that is there. It stays where it is fast, on the ${lift.controlSide}, and ${len(resolved.making.lift.cleatAboveFloorMm)} or more above the floor; otherwise fix one so.`
        : `Screw the cleat to the wall or the frame on the ${lift.controlSide}, below the lock, ${len(resolved.making.lift.cleatAboveFloorMm)} or more above the floor.`,
      `The cord hangs ${len(lift.tailLoweredMm)} below the lock when the shade is down and ${len(lift.tailRaisedMm)} when it is up. Wind all of it on the cleat in figures of eight, every time.`,
    ),
    check:
      "With the shade up and the cord wound on, no cord hangs where a child can reach it. If one does, the shade should not hang there.",
    caution: CORDS_AT_HANGING,
    sheet: "front",
    figures: ["rig.tail-raised"],
  };
}

/** The cleat that alone holds the shade: straight below the last eye, and how the cords go on it. */
function lastCleat(bench: CleatBench): Step {
  const { resolved, lift, len } = bench;
  const { toCleatMm, figureEights } = lift;
  const keeps = keepsCleat(bench);
  return {
    id: "hang-cleat",
    chapter: "hang",
    action: {
      kind: "wind-cleat",
      below: "eye",
      side: lift.controlSide,
      aboveFloorMm: resolved.making.lift.cleatAboveFloorMm,
    },
    title: keeps ? "Try its cleat" : "Fix the cleat",
    brief: `${len(resolved.making.lift.cleatAboveFloorMm)} or more above the floor`,
    text: sentences(
      keeps
        ? `Pull hard at the cleat that is there. It stays where it is upright and fast, on the ${lift.controlSide}, straight below the last eye, and ${len(resolved.making.lift.cleatAboveFloorMm)} or more above the floor; otherwise fix one so, with both its screws into something that holds.`
        : `Screw the cleat upright to the wall or the frame on the ${lift.controlSide}, straight below the last eye, ${len(resolved.making.lift.cleatAboveFloorMm)} or more above the floor, with both its screws into something that holds.`,
      toCleatMm !== undefined && toCleatMm > 0 && `That is ${len(toCleatMm)} below the last eye.`,
      "Wind the cords like this, every time: once round the foot of the cleat, then in figures of eight, over one horn and under the other, the last turn tucked under itself.",
      figureEights !== undefined && figureEights > 0
        ? `Raised, all that hangs makes about ${counted(figureEights, "figure")} of eight.`
        : `Raised, the cords hang ${len(lift.tailRaisedMm)} below the last eye: all of it goes on.`,
    ),
    check:
      "With the shade up and down, and the cords wound on, no cord hangs below the cleat and no turn slips when you pull at the hem. If a child could reach a cord, the shade should not hang there.",
    caution: `${CORDS_AT_HANGING} ${WALL}`,
    sheet: "lock",
    figures: ["rig.tail-raised"],
  };
}

function tryCleat({ resolved, grid, lift, len }: CleatBench): Step {
  return {
    id: "hang-try",
    chapter: "hang",
    title: "Raise it for the first time",
    text: `There is no lock: hold the cords in one hand all the time, the other on the board the first time. Draw them slowly straight down; the shade goes up from the hem, and raised it is ${len(grid.raisedHeightMm)} high. Wind them on the cleat while you still hold them: it bears ${forceText(lift.holdN, resolved.units)}. To let it down, unwind to the last turn and let the cords run through your hand over the foot of the cleat; never let go.`,
    check: "It goes up without catching, stays when it is wound on, and comes all the way down.",
    caution: CORDS_AT_HANGING,
    sheet: "side",
    figures: ["shape.raised-height", "lift.pull"],
  };
}

/** The cords of a top that comes down hang at the front whatever works the shade, and have a cleat of their own. */
function railCleat({ resolved, lift, len }: Bench): Step[] {
  const { topRail } = lift;
  if (topRail === undefined) return [];
  return [
    {
      id: "hang-rail-cleat",
      chapter: "hang",
      action: {
        kind: "wind-cleat",
        below: "lock",
        side: topRail.side,
        aboveFloorMm: resolved.making.lift.cleatAboveFloorMm,
      },
      title: "Fix the cleat of the top rail",
      text: sentences(
        `Screw the second cleat to the wall or the frame on the ${topRail.side}, below the top rail’s own lock, ${len(resolved.making.lift.cleatAboveFloorMm)} or more above the floor.`,
        `The rail’s cords hang ${len(topRail.tailDownMm)} below their lock when the top is let down and ${len(topRail.tailUpMm)} when it is up. Wind all of them on this cleat in figures of eight, every time.`,
      ),
      check:
        "With the top up and the cords wound on, no cord hangs where a child can reach it. If one does, the shade should not hang there.",
      caution: CORDS_AT_HANGING,
      sheet: "front",
    },
  ];
}

function tryLock({ grid, lift, len }: LockBench): Step {
  return {
    id: "hang-try",
    chapter: "hang",
    title: "Raise it for the first time",
    text: `Stand below the lock, a hand on the board the first time, and pull the cords slowly down, away from the ${lift.controlSide} edge. The shade goes up from the hem; raised, it is ${len(grid.raisedHeightMm)} high. Swing the cords outward to lock it, inward to let it down. Do this a few times and watch the eyes.`,
    check: "It goes up without catching, holds where you stop, and comes all the way down.",
    caution: CORDS_AT_HANGING,
    sheet: "side",
    figures: ["shape.raised-height"],
  };
}

const COMES_DOWN = "It goes up without catching, stays where you stop, and comes all the way down.";

function releaseSpring(lift: SpringLift): Step {
  return {
    id: "hang-control",
    chapter: "hang",
    title: "Let the spring take the shade",
    text: `With the shade right down and a hand on its hem, draw the pin of ${lift.drive.name} as its instructions show, and let the spring take the weight slowly.`,
    check:
      "The hem stays where it is when your hand goes away. If it rises or sinks, change the tension by a turn.",
    caution: SPRING,
    sheet: "side",
    figures: ["lift.spring-band"],
  };
}

function trySpring(bench: Bench): Step {
  const { grid, len } = bench;
  return {
    id: "hang-try",
    chapter: "hang",
    title: "Raise it for the first time",
    text: `Take the hem in the middle and lift it slowly; the spools take up the cords. Raised, the shade is ${len(grid.raisedHeightMm)} high. Stop at every row and let go. Then draw it down again by the hem. Do this a few times.`,
    check:
      "It stays where you let go, at every row. Where it does not, the spring does not match this weight: ask its maker for another before the shade is used.",
    caution: cordCaution(bench),
    sheet: "side",
    figures: ["shape.raised-height", "lift.pull"],
  };
}

function hangWand({ len }: Bench, lift: WandLift): Step {
  return {
    id: "hang-control",
    chapter: "hang",
    title: "Hang the wand",
    text: sentences(
      `Hang the wand, ${len(lift.wandMm)} long, in ${lift.drive.name} on the ${lift.controlSide}.`,
      lift.detachable &&
        "It comes off: put up a hook for it, out of the reach of children, and hang it there after use.",
    ),
    check: "It turns freely and does not lie against the cloth.",
    caution: WAND,
    sheet: "front",
  };
}

function tryWand(bench: Bench, lift: WandLift): Step {
  const { grid, len } = bench;
  return {
    id: "hang-try",
    chapter: "hang",
    title: "Raise it for the first time",
    text: `Turn the wand slowly; it takes about ${trimmed(lift.handTurns, 0)} turns from one end to the other. Raised, the shade is ${len(grid.raisedHeightMm)} high: stop there, and mark the wand’s last turn if the drive has no stop of its own. Turn it down again. Do this a few times and watch the spools.`,
    check: COMES_DOWN,
    caution: cordCaution(bench),
    sheet: "side",
    figures: ["shape.raised-height", "lift.hand-turns", "lift.pull"],
  };
}

function fixTensioner({ len }: Bench, lift: LoopLift): Step {
  return {
    id: "hang-control",
    chapter: "hang",
    title: "Fix the tensioner of the loop",
    brief: [
      `lowest point ${len(lift.loopDropMm)} below the drive`,
      ...(lift.loopEndAboveFloorMm === undefined ? [] : [`${len(lift.loopEndAboveFloorMm)} above the floor`]),
    ].join(" · "),
    text: sentences(
      `Lay the loop, ${len(lift.loopPerimeterMm)} all round, over the wheel of ${lift.drive.name} on the ${lift.controlSide} and into its tensioner.`,
      lift.breakaway &&
        "Close it with its breakaway connector, as that one’s own instructions show: hang 6 kg (13 lb) in it once and see that it comes apart.",
      `Draw the tensioner down until the loop is taut, its lowest point ${len(lift.loopDropMm)} below the drive, and screw it to the wall or the frame there.`,
      lift.loopEndAboveFloorMm !== undefined && `That is ${len(lift.loopEndAboveFloorMm)} above the floor.`,
    ),
    check:
      "Pulled sideways the loop gives no slack, and a strong pull does not move the tensioner. If it can be taken off without a tool, or works loose, the shade should not hang there.",
    caution: `${LOOP} ${WALL}`,
    sheet: "front",
    figures: ["rig.loop-perimeter"],
  };
}

function tryLoop({ resolved, grid, len }: Bench, lift: LoopLift): Step {
  return {
    id: "hang-try",
    chapter: "hang",
    title: "Raise it for the first time",
    brief: `${len(grid.raisedHeightMm)} high`,
    text: `Draw one side of the loop slowly down; about ${cordLengthText(lift.loopTravelMm, resolved.units)} of it brings the shade up. Raised, the shade is ${len(grid.raisedHeightMm)} high: stop there, and set the drive’s stop if it has one. Draw the other side to let it down. Do this a few times and watch the spools.`,
    check: COMES_DOWN,
    caution: LOOP,
    sheet: "side",
    figures: ["shape.raised-height", "rig.loop-travel", "lift.pull"],
  };
}

function connectMotor(lift: MotorLift): Step {
  const mains = lift.power !== "low-voltage";
  return {
    id: "hang-control",
    chapter: "hang",
    title: mains ? "Have the motor connected" : "Give the motor its power",
    text: mains
      ? `Have ${lift.drive.name} connected by a licensed electrician, and switched off while you work at the shade.`
      : `Connect ${lift.drive.name} to its battery or power supply as its own instructions show, the lead clipped to the board and away from tube and spools.`,
    check: "No lead hangs where it can be pulled, and none lies where the tube turns.",
    caution: mains ? MAINS : LOW_VOLTAGE,
    sheet: "board",
  };
}

function tryMotor(bench: Bench, lift: MotorLift): Step {
  const { grid, len } = bench;
  return {
    id: "hang-try",
    chapter: "hang",
    title: "Set the ends of its travel",
    text: sentences(
      `Stand by with a hand on the switch. Set the lower end of the travel with the shade right down, and the upper end where the shade is ${len(grid.raisedHeightMm)} high, as the motor’s instructions show.`,
      lift.raiseSeconds !== undefined &&
        `From one to the other takes about ${trimmed(lift.raiseSeconds, 0)} seconds.`,
      "Run it up and down a few times and watch the spools.",
    ),
    check: "It stops by itself at both ends, and stops at once when you ask it to.",
    caution: cordCaution(bench),
    sheet: "side",
    figures: ["shape.raised-height", "lift.turns"],
  };
}
