import type { Step } from "../shade-plan/index.ts";
import { LADDER } from "../words/index.ts";
import { type Bench, type CleatBench, isCleatBench, isLockBench, type LockBench } from "./bench.ts";
import { cordCaution } from "./cord-caution.ts";
import { CORDS_AT_HANGING, CORDS_LEFT_HANGING, GLUE } from "./hazards.ts";
import { placed, sentences } from "./wording.ts";

/** The hem brought level by the knots at the bottom rings, then tails joined or sleeves closed. */
export function levelSteps(bench: Bench): Step[] {
  return [
    look(bench),
    knots(bench),
    ...sleeveEnds(bench),
    ...(isLockBench(bench) || isCleatBench(bench) ? [...connect(bench), trim(bench)] : []),
  ];
}

const STAYS: Record<Bench["lift"]["takeUp"], string> = {
  lock: " and lock it",
  cleat: " and wind the cords on the cleat",
  tube: "",
};

function exitOf({ takeUp }: Bench["lift"]): string {
  return takeUp === "lock" ? "lock" : "last eye";
}

/** A level lies on a straight hem alone: one that dips or hangs in scallops is measured where the cords hold it. */
function isStraight({ swags }: Bench["form"]): boolean {
  return swags.every(({ sagMm }) => sagMm < 1);
}

function look({ size, form, lift, len, about }: Bench): Step {
  const floor = size.hemAboveFloorMm;
  return {
    id: "level-look",
    chapter: "level",
    title: "See how the hem hangs",
    text: sentences(
      `Raise the shade by a hand’s breadth${STAYS[lift.takeUp]}, so that every cord carries. ${isStraight(form) ? "Lay a spirit level on the hem, or measure" : "Measure"} from the sill to the hem under each column.`,
      floor !== undefined && floor > 0 && `Let right down, the hem is planned ${len(floor)} above the floor.`,
      lift.cords.length > 1 && "Touch every cord behind: all are tight. One that is slack is too long.",
    ),
    check: `Level means within ${about("level")} from end to end.`,
    caution: LADDER,
    sheet: "back",
  };
}

/** The cord that stays: nearest lock or last eye, or any one, in the middle, where all are alike. */
function cordToKeep({ lift }: Bench): string | undefined {
  if (lift.cords.length < 2) return undefined;
  if (lift.takeUp === "tube") {
    const middle = lift.cords[Math.floor((lift.cords.length - 1) / 2)];
    return middle === undefined ? undefined : `Leave cord ${middle.number}, in the middle, as it is`;
  }
  const [nearest] = [...lift.cords].sort((a, b) => a.runMm - b.runMm);
  return nearest === undefined
    ? undefined
    : `Leave cord ${nearest.number}, nearest the ${exitOf(lift)}, as it is`;
}

/** A cord runs from its knot to lock, cleat or spool: taking up at the knot lifts the hem at that column by as much. */
function knots(bench: Bench): Step {
  const { resolved, grid, len } = bench;
  const { knotsMm } = resolved.making.lift;
  const keep = cordToKeep(bench);
  return {
    id: "level-knots",
    chapter: "level",
    action: {
      kind: "level-hem",
      columnsMm: grid.columns.map((column) => column.xMm),
      widthMm: bench.size.finishedWidthMm,
      withinMm: bench.aboutMm("level"),
    },
    title: "Move the knots",
    text: sentences(
      keep !== undefined && `${keep}, and bring the others to it.`,
      "Where the hem hangs low, the cord of that column is too long: undo its knot at the bottom ring, take up as much as the hem is low, and tie it again. Where the hem hangs high, let out as much.",
      `From the left edge, seen from the room, hangs ${placed(
        "cord",
        grid.columns.map((column) => ({ number: column.number, at: len(column.xMm) })),
      )}.`,
      `Each cord was cut with ${len(knotsMm)} for knots.`,
    ),
    check:
      "Lower it, raise it again by a hand’s breadth: the hem is still level and no cord is slack. Put a drop of glue on every knot.",
    caution: GLUE,
    sheet: "back",
  };
}

function connect({ lift, about, aboutMm }: LockBench | CleatBench): Step[] {
  if (lift.cords.length < 2) return [];
  return [
    {
      id: "level-connector",
      chapter: "level",
      action: {
        kind: "join-tails",
        from: lift.takeUp === "lock" ? "lock" : "eye",
        cords: lift.cords.length,
        belowMm: aboutMm("connectorBelowLock"),
      },
      title: "Join the tails in the connector",
      text: `Let the shade right down. Even the tails, all cords just tight, and fit the cord connector on all ${lift.cords.length} of them, ${about("connectorBelowLock")} or less below the ${exitOf(lift)}. Use one that comes apart under a pull, as its own instructions show. Do not knot the cords into one another instead.`,
      check: `Raise and lower it: the hem stays level and the connector does not run into the ${exitOf(lift)}.`,
      caution: CORDS_AT_HANGING,
      sheet: "lock",
    },
  ];
}

function trim({ lift, len }: LockBench | CleatBench): Step {
  const one = lift.cords.length === 1;
  return {
    id: "level-trim",
    chapter: "level",
    title: one ? "Trim the tail" : "Trim the tails",
    text: `With the shade right down, cut ${one ? "the tail" : "all tails level,"} ${len(lift.tailLoweredMm)} below the ${exitOf(lift)}, and seal ${one ? "its end" : "the ends"}. Put the offcuts in the bin at once.`,
    check: `Raised, ${one ? "it hangs" : "they hang"} ${len(lift.tailRaisedMm)} below the ${exitOf(lift)}, and all of it goes on the cleat.`,
    caution: CORDS_LEFT_HANGING,
    sheet: "front",
    figures: ["rig.tail-raised"],
  };
}

/** Sleeves were left open at the knots. */
function sleeveEnds({ cloth, lift }: Bench): Step[] {
  if (cloth.sleeves === undefined && lift.wovenSleeves === undefined) return [];
  return [
    {
      id: "level-sleeves",
      chapter: "level",
      title: "Close the sleeves at the bottom",
      text: "Now that the knots stay, close each sleeve down to its bottom ring by hand, over the knot.",
      check: "From the bottom ring up to the board no finger gets hold of a bare cord.",
      caution: cordCaution({ lift }),
      sheet: "back",
    },
  ];
}
