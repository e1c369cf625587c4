import { groupedBy } from "../figures/index.ts";
import { type CordRun, fromBoardEndMm, type Step } from "../shade-plan/index.ts";
import { counted, listed } from "../words/index.ts";
import type { LockBench } from "./bench.ts";
import { CORDS_AT_THREADING } from "./hazards.ts";
import { bar, closeSleeves, cutCords, tie } from "./string-cords.ts";
import { sentences } from "./wording.ts";

/** From cut cords to a threaded lock on the board and the bar in the hem. */
export function lockStringSteps(bench: LockBench): Step[] {
  return [
    cutCords(bench),
    tie(bench),
    ...closeSleeves(bench),
    throughEyes(bench),
    openLock(bench),
    thread(bench),
    screwLock(bench),
    comb(bench),
    ...bar(bench),
  ];
}

function throughEyes({ lift }: LockBench): Step {
  const path = (cord: CordRun) => {
    const [, ...passed] = cord.eyes;
    return passed.length === 0
      ? `cord ${cord.number} through its own eye only`
      : `cord ${cord.number} through its own eye, then through ${passed.length === 1 ? "eye" : "eyes"} ${listed(passed.map(String))}`;
  };
  return {
    id: "string-eyes",
    chapter: "string",
    title: "Lead the cords through the eyes",
    text: `Each cord goes up into the eye above its own column, turns there, and runs along the board towards the lock: ${lift.cords.map(path).join("; ")}. Keep them side by side: one that lies over another is pinched when both are drawn.`,
    check: "Between the eyes no cord lies over another.",
    sheet: "board",
  };
}

function openLock({ lift }: LockBench): Step {
  const slots = lift.slots.length;
  return {
    id: "string-open-lock",
    chapter: "string",
    action: { kind: "shake-lock", slots, facing: lift.seat.facing },
    title: "Open the lock in your hand",
    text: sentences(
      "Thread it now, in the hand and before anything is mounted: screwed on, the board is in the way of your fingers.",
      `Hold the lock, ${lift.lockName}, overhead the way it will sit, looking up into it, toothed roller and smooth crown outwards, to the ${lift.seat.facing} seen from the room.`,
      "Shake it until the rollers lie apart and the gap between them opens. Never turn it over while you thread: upside down, gravity closes them.",
      slots > 1
        ? `Its ${counted(lift.dividerWires, "wire")} make ${counted(slots, "slot")}. Slot 1 is the one nearest the wall. Leave the wires in.`
        : "It has one slot.",
    ),
    check: "Light shows through the gap from one end of the rollers to the other.",
    sheet: "lock",
  };
}

/** Cord by cord in threading order, then how they lie, slot by slot. */
function thread({ lift }: LockBench): Step {
  const byNumber = new Map(lift.cords.map((cord) => [cord.number, cord]));
  const turns = lift.threading.flatMap((number) => {
    const cord = byNumber.get(number);
    return cord === undefined
      ? []
      : [`cord ${number} from the ${cord.entersFrom} end into slot ${cord.slot}`];
  });
  return {
    id: "string-thread",
    chapter: "string",
    action: {
      kind: "thread-lock",
      facing: lift.seat.facing,
      slots: lift.slots.map((slot) => slot.number),
      cords: lift.threading.flatMap((number) => {
        const cord = byNumber.get(number);
        return cord === undefined ? [] : [{ number, from: cord.entersFrom, slot: cord.slot }];
      }),
    },
    title: "Thread the lock",
    text: sentences(
      `Put the cords in one at a time, in this order, ends seen from the room: ${turns.join("; ")}.`,
      "Each comes in level at its end, over the roller there, and goes down between the two. One cord at a time, each from its own side: two at once cross, or pull one another along.",
      "Let every cord hang out until it has no twist, in or below the lock: a twisted one climbs over its neighbour, and they rub. Nothing is twisted in, so that nothing has to be twisted out. Fetch a stray one through the gap with tweezers: fingers close the rollers, and a needle splits the cord.",
      ...sharedSlots(lift.cords),
    ),
    check: `${slotText(lift.cords)}. No two cross, in front of the lock or below it.`,
    caution: CORDS_AT_THREADING,
    sheet: "lock",
  };
}

function inSlots(cords: CordRun[]): [slot: number, cords: CordRun[]][] {
  return [...groupedBy(cords, ({ slot }) => slot)]
    .sort(([a], [b]) => a - b)
    .map(([slot, inside]) => [slot, inside.sort((a, b) => a.placeInSlot - b.placeInSlot)]);
}

function slotText(cords: CordRun[]): string {
  const text = inSlots(cords).map(
    ([slot, inside]) =>
      `slot ${slot} holds ${inside.length === 1 ? "cord" : "cords"} ${listed(inside.map((cord) => String(cord.number)))}`,
  );
  const line = listed(text);
  return `${line.charAt(0).toUpperCase()}${line.slice(1)}`;
}

function sharedSlots(cords: CordRun[]): string[] {
  return inSlots(cords).some(([, inside]) => inside.length > 1)
    ? ["Where cords share a slot they lie side by side, the first one in nearest the wall."]
    : [];
}

function screwLock(bench: LockBench): Step {
  const { lift, len } = bench;
  return {
    id: "string-screw-lock",
    chapter: "string",
    action: {
      kind: "screw-lock",
      facing: lift.seat.facing,
      fromEndMm: fromBoardEndMm(bench, lift.seat.xMm),
      screws: lift.seat.screwsMm.length,
    },
    title: "Screw the lock on",
    text: `See that its toothed roller and its smooth crown look outwards, to the ${lift.seat.facing} seen from the room: facing the other way it would hold when it should let go, and the cut ends of the wires would show at the side. Slide the lock up the cords to its place, its middle ${len(fromBoardEndMm(bench, lift.seat.xMm))} from the left end of the board, and put in ${counted(lift.seat.screwsMm.length, "screw")}. Keep the cords slack meanwhile, so that none is caught.`,
    check: `Pull all cords to the ${lift.controlSide} and down: they hold. Pull to the other side: they run. If it is the other way round, the lock faces the wrong way.`,
    sheet: "lock",
  };
}

function comb({ lift }: LockBench): Step {
  return {
    id: "string-comb",
    chapter: "string",
    title: "Comb the tails",
    text:
      lift.cords.length === 1
        ? "Let the tail hang, and take the twist out of it between two fingers, from the lock down."
        : "Comb the tails between your fingers from the lock down, one cord after the other, until none is twisted round another: twisted tails shorten one another, and the hem hangs out of level. Do not join them yet.",
    check: "Each tail can be lifted out of the bundle by itself, down to its end.",
    caution: CORDS_AT_THREADING,
    sheet: "lock",
  };
}
