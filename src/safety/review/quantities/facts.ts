import { cleatAstray } from "../cleat-astray.ts";
import { aboveFloorMm, type CordGeometry } from "../cord-geometry.ts";
import { courseAt } from "../course.ts";
import { leansOnBoth, leansOnClips } from "./lead.ts";
import { cordCount, frontLowPointMm, hangingAt, lowestName, pullStates } from "./pull-cords.ts";
import type { QuantityFact, Reading } from "./quantity.ts";
import { leansOnGuide } from "./rear-cords.ts";

const LOWERED = 0;
const RAISED = 1;

function fact(of: QuantityFact["of"]): QuantityFact {
  return { kind: "fact", of };
}

/** The value decides, either way. */
function known(value: number, why: string, raise = LOWERED): Reading {
  return { value, raise, why, over: "failed", within: "not-shown-to-fail" };
}

/** A bad value decides, a good one does not. */
function atLeastThis(value: number, why: string, raise = LOWERED): Reading {
  return { value, raise, why, over: "failed", within: "not-proven" };
}

/** Nothing that a plan knows decides. */
function notKnown(why: string, raise = LOWERED, read: Pick<Reading, "value"> = {}): Reading {
  return { ...read, raise, why, over: "not-proven", within: "not-proven" };
}

/** Only the maker can tell, once it is done. */
function untilDone(why: string): QuantityFact {
  return fact(() => notKnown(why));
}

const HEIGHT_UNKNOWN = "The height of the window above the floor is not known.";
const NO_PULL_CORD = { absent: "No pull cord hangs on this lift." };
const NO_LOOP = { absent: "No operating loop hangs on this lift." };

const CLEAT_UNDER_WHAT =
  "The height of the window above the floor is not known, so that the cleat may hang above what its cord comes from";

export const cleatHeight = fact(({ geometry }) => {
  const { pulls, topAboveFloorMm } = geometry;
  if (pulls.length === 0) return NO_PULL_CORD;
  const heightMm = Math.min(...pulls.map(({ cleatAboveFloorMm }) => cleatAboveFloorMm));
  const open = cleatAstray(geometry) ?? (topAboveFloorMm === undefined ? CLEAT_UNDER_WHAT : undefined);
  return {
    ...known(heightMm, open ?? "Height of the cleat above the floor", RAISED),
    cords: "cleat",
    ...(open === undefined ? {} : { within: "not-proven", test: "wind-on-cleat" }),
  };
});

export const cordToWind = fact(({ geometry }) =>
  geometry.pulls.length === 0
    ? NO_PULL_CORD
    : notKnown(
        "So much cord hangs with the shade raised and has to go on the cleat. Whether it takes all of it shows when it is wound.",
        RAISED,
        { value: hangingAt(geometry, RAISED) },
      ),
);

/** What reaches below the cleat before the cord is wound on it: a lone cord as short as that needs no winding. */
export const tailBelowCleat = fact(({ geometry }) => {
  const { pulls, topAboveFloorMm } = geometry;
  if (pulls.length === 0) return NO_PULL_CORD;
  if (topAboveFloorMm === undefined) return notKnown(HEIGHT_UNKNOWN, RAISED);
  const belowMm = Math.max(
    0,
    ...pulls.map(({ exitBelowTopMm, cleatAboveFloorMm, lengthMm }) => {
      const toCleatMm = Math.max(0, topAboveFloorMm - exitBelowTopMm - cleatAboveFloorMm);
      return courseAt(lengthMm, RAISED) - toCleatMm;
    }),
  );
  const reading = notKnown(
    "So much cord reaches below the cleat before it is wound. What still hangs after winding, and whether it is a single cord, shows on the wall.",
    RAISED,
    { value: belowMm },
  );
  return cordCount(pulls) === 1 ? { ...reading, within: "not-shown-to-fail" } : reading;
});

export const securedByDevice = fact(({ geometry }) => {
  const { pulls, loop, topAboveFloorMm } = geometry;
  if (pulls.length === 0 && loop === undefined) return { absent: "No pull cord or loop hangs on this lift." };
  if (topAboveFloorMm === undefined) return notKnown(HEIGHT_UNKNOWN, RAISED);
  return {
    ...atLeastThis(
      Math.min(...pullStates(geometry).map((raise) => frontLowPointMm(geometry, raise))),
      "So high ends what hangs, in the worst state. Whether the cleat or the tensioner meets the standard cannot be seen from a plan.",
      RAISED,
    ),
    cords: lowestName(geometry, RAISED).cords,
  };
});

export const breakawayLoad = fact(({ geometry: { loop } }) =>
  loop?.device === "breakaway"
    ? notKnown("At what load the loop comes apart shows when it is tried.")
    : NO_LOOP,
);

export const breakawayLoopLowPoint = fact(({ geometry }) => {
  const { loop } = geometry;
  if (loop?.device !== "breakaway") return NO_LOOP;
  const exitMm = aboveFloorMm(geometry, loop.exitBelowTopMm);
  return exitMm === undefined
    ? notKnown(HEIGHT_UNKNOWN)
    : { ...known(Math.max(0, exitMm - loop.dropMm), "Lower end of the loop above the floor"), cords: "loop" };
});

export const breakawayLoopLength = fact(({ geometry: { loop } }) =>
  loop?.device === "breakaway" ? { ...known(loop.dropMm, "What hangs of the loop"), cords: "loop" } : NO_LOOP,
);

/** An operating loop where it reaches below a height; all of it where the height is not known. */
export const operatingLoopLength = fact(({ geometry }, { belowFloorMm = Number.POSITIVE_INFINITY }) => {
  const { loop } = geometry;
  if (loop === undefined) return NO_LOOP;
  const exitMm = aboveFloorMm(geometry, loop.exitBelowTopMm);
  if (exitMm === undefined) return notKnown(HEIGHT_UNKNOWN);
  if (exitMm - loop.dropMm >= belowFloorMm) {
    return { absent: "The loop does not hang as low as this rule asks." };
  }
  return { ...known(loop.dropMm, "What hangs of the loop"), cords: "loop" };
});

export const innerCordsReachable = fact(({ geometry: { rear } }) => {
  if (rear === undefined) return { absent: "No lift cord runs up the back." };
  return rear.guide === "enclosed"
    ? notKnown(
        "The lift cords run in sleeves sewn by hand and are bare where they leave them below the board. Whether they can be reached is for the test of appendix C to say.",
      )
    : notKnown(
        "The lift cords can be reached at the back. Whether they are too short to form a hazardous loop is for the tests of appendices C and D to say, which no plan replaces.",
      );
});

export const freeHangingCords = fact(({ geometry: { pulls } }) => {
  const count = cordCount(pulls);
  const hang = count === 1 ? "One cord hangs" : `${count} cords hang`;
  return {
    ...known(count, count === 0 ? "No cord hangs free." : `${hang} free at the front.`, RAISED),
    cords: frontOf(pulls),
  };
});

export const cordsInConnector = fact(({ geometry: { pulls } }) => {
  const most = Math.max(0, ...pulls.map(({ count, joinedMm }) => (joinedMm === undefined ? 0 : count)));
  return most === 0
    ? known(0, "No connector joins cords.")
    : { ...known(most, `${most} cords run into one connector.`, RAISED), cords: frontOf(pulls) };
});

export const accessibleCords = fact(({ geometry }) => {
  const front = cordCount(geometry.pulls) + (geometry.loop === undefined ? 0 : 1);
  const back = reachableBehind(geometry);
  const lead = (geometry.leadLooseMm ?? 0) > 0 ? 1 : 0;
  if (front + back + lead === 0) {
    const leansOn = leansOnBoth(leansOnGuide(geometry), leansOnClips(geometry));
    if (leansOn !== undefined)
      return { raise: LOWERED, over: "not-proven", within: "not-proven", ...leansOn };
    return known(0, "This lift has no cord.");
  }
  return {
    ...known(
      front + back + lead,
      `Cords in reach: ${front} at the front, ${back} at the back${lead === 0 ? "" : ", and the motor’s lead"}.`,
      front > 0 ? RAISED : LOWERED,
    ),
    cords:
      cordCount(geometry.pulls) > 0
        ? frontOf(geometry.pulls)
        : front > 0
          ? "loop"
          : back > 0
            ? "back"
            : "lead",
  };
});

/** Cords of a top rail alone, or those that raise the shade as well. */
function frontOf(pulls: CordGeometry["pulls"]): "rail" | "front" {
  return pulls.some(({ raises }) => raises === "shade") ? "front" : "rail";
}

function reachableBehind({ rear }: CordGeometry): number {
  if (rear === undefined) return 0;
  return rear.guide === "enclosed" && rear.boardSpansMm.length === 0 ? 0 : rear.count;
}

export const hiddenCordExposed = fact(({ geometry: { rear } }) =>
  rear?.guide === "enclosed"
    ? notKnown(
        "The lift cords are hidden in a sewn sleeve. That they stay so, in every position and for years, shows only in a test.",
      )
    : { absent: "No cord of this shade is counted as out of reach." },
);

export const reliesOnDevice = fact(({ geometry: { pulls, loop, rear } }) => {
  if (pulls.length > 0)
    return {
      ...known(1, "The hanging cord is out of reach only while it is wound on its cleat.", RAISED),
      cords: frontOf(pulls),
    };
  if (loop !== undefined) {
    return { ...known(1, "The loop is held only by the device that its owner fixes."), cords: "loop" };
  }
  if (rear !== undefined && rear.guide !== "open") {
    return notKnown(
      "The rear cords lean on a sleeve. They count only if no hand takes them off without a tool.",
    );
  }
  return known(0, "Nothing on this lift leans on a device.");
});

export const loopDeviceFixed = fact(({ geometry: { loop } }) => {
  if (loop === undefined) return NO_LOOP;
  return loop.device === "none"
    ? { ...known(0, "The loop hangs loose, without a device."), cords: "loop" }
    : notKnown(
        "Whether the device is attached in the workshop, and the shade useless until it is fixed, shows on the finished shade.",
      );
});

export const collectorOpens = fact(({ geometry: { pulls } }) =>
  pulls.every(({ joinedMm }) => joinedMm === undefined)
    ? { absent: "No connector collects cords." }
    : notKnown("At what load the connector comes apart shows when it is tried.", RAISED),
);

const ON_TAG =
  "So high are the letters on the tag of this plan. They count once they are everywhere that the rule asks for.";
export const signalWordHeight = fact(({ tag }) => atLeastThis(tag.signalMm, ON_TAG));
export const warningTextHeight = fact(({ tag }) => atLeastThis(tag.textMm, ON_TAG));

/** Of a loop on a device that hangs low enough for a child; a cleat is another rule’s. */
export const guideKeepsCord = fact(({ geometry }, { belowFloorMm = 0 }) => {
  const { loop } = geometry;
  if (loop === undefined || loop.device === "none") return { absent: "No guide holds a cord of this shade." };
  // Where the window's height is not known it may sit as low as any.
  const exitMm = aboveFloorMm(geometry, loop.exitBelowTopMm) ?? 0;
  if (exitMm - loop.dropMm >= belowFloorMm) {
    return { absent: "The guide does not sit as low as this rule asks." };
  }
  return notKnown("Whether a child can take the cord out of its guide shows when it is tried on the wall.");
});

export const buttonCells = fact(({ geometry: { kind } }) =>
  kind === "motor"
    ? notKnown("Which cells the remote control runs on, and how its lid is shut, shows on the remote itself.")
    : { absent: "No remote control comes with this lift." },
);

export const instructionsFollowed = untilDone("It is so once the shade has been hung by them.");
export const smallParts = untilDone("Only a pull at each part shows whether it stays on.");
export const leadContent = untilDone("Only a laboratory, or the papers of whoever made the parts, can tell.");
export const warningsAndLabels = untilDone(
  "It is there once you have put it on. The tag of this plan is a start.",
);
export const makerLabel = untilDone("It is there once you have put your own label on.");
export const refersToLaw = untilDone(
  "The tag of this plan names no law. Look through what else you print and publish.",
);
