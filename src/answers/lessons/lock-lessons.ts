import { askLock } from "../../diagnose/index.ts";
import { type CordLockLift, fromBoardEndMm } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import { fineText } from "../../units/index.ts";
import { counted, listed } from "../../words/index.ts";
import { ofLocked } from "./lesson.ts";

export const whichLock = ofLocked((facts, { lift }) => {
  const count = lift.cords.length;
  const diameter = fineText(lift.cordDiameterMm);
  return {
    title: "Which lock, and why",
    question: `Which lock holds ${counted(count, "cord")} of ${diameter}?`,
    views: [
      {
        sheet: "lock",
        raise: 0,
        points: [
          {
            part: "toothed-roller",
            text: `Toothed roller, towards the ${lift.seat.facing}. Pulled that way the cords draw it against the other one: it bites.`,
          },
          {
            part: "smooth-roller",
            text: "Smooth roller. Held overhead the two lie apart; upside down they fall together.",
          },
          ...(lift.dividerWires === 0
            ? []
            : [
                {
                  part: "wire-1",
                  text: `${counted(lift.dividerWires, "wire")} part ${counted(lift.slots.length, "slot")}. They stay in: cords that cross are pressed unequally, and one creeps.`,
                },
              ]),
          {
            part: "lock",
            text: `Housing${lift.endGapMm === undefined ? "" : `, with a gap of ${fineText(lift.endGapMm)} at a roller’s end`}. A cord thinner than that gap wedges in it.`,
          },
        ],
      },
    ],
    figures: [
      ...askLock(count, lift.cordDiameterMm, facts.locks).map(({ lock, takes, remarks }) => ({
        label: lock.name,
        text: takes
          ? "takes them"
          : (remarks.find(({ severity }) => severity === "stop")?.text ?? "does not"),
      })),
      { label: "Cord", text: diameter },
    ],
    reason:
      "Count the cords first, then measure one: ten turns side by side round a pencil, by ten. The lock must take that many, of that size, with no slot fuller than it is made for.",
    cite: cite("lock-instructions", "capacity and cord diameters of a lock"),
  };
});

export const threading = ofLocked((_facts, { lift }) => ({
  title: "Threading the lock",
  question: "In which order do the cords go in, and from which end?",
  views: [
    {
      sheet: "lock",
      raise: 0,
      points: [
        {
          part: "toothed-roller",
          text: `Toothed roller, to the ${lift.seat.facing}. A cord comes in level over the roller on its own side and goes down between both.`,
        },
        {
          part: "wire-1",
          text: "The first wire: nearer to the wall is slot 1, and slots are counted from there.",
        },
        {
          part: `cord-${lift.threading[0]}`,
          text: `Cord ${lift.threading[0]} goes in first. Cords have the number of their column.`,
        },
      ],
    },
  ],
  figures: threadedTogether(lift).map((cords, i) => ({
    label: `${i + 1}. ${cords.length === 1 ? "Cord" : "Cords"} ${listed(cords.map(({ number }) => String(number)))}`,
    text: `in at the ${cords[0].entersFrom} end, down through slot ${cords[0].slot}`,
  })),
  reason:
    "In the hand, before it is screwed on: shake it overhead until light shows between the rollers. One cord at a time, each from its own side, in this order: none crosses another. Slot 1 is nearest the wall. Let each hang out until it has no twist.",
  cite: cite("lock-instructions", "threading"),
}));

type Threaded = CordLockLift["cords"][number];

/** Cords in the order in which they go in, those that follow each other through one slot from one end together. */
function threadedTogether({ threading, cords }: CordLockLift): [Threaded, ...Threaded[]][] {
  const together: [Threaded, ...Threaded[]][] = [];
  for (const number of threading) {
    const cord = cords.find((one) => one.number === number);
    if (cord === undefined) continue;
    const last = together.at(-1);
    if (last !== undefined && last[0].slot === cord.slot && last[0].entersFrom === cord.entersFrom)
      last.push(cord);
    else together.push([cord]);
  }
  return together;
}

export const seat = ofLocked((facts, locked) => {
  const { lift, board, grid } = locked;
  const alongMm = fromBoardEndMm(locked, lift.seat.xMm);
  const last = lift.controlSide === "left" ? 1 : grid.columns.length;
  return {
    title: "Where the lock sits",
    question: "How far in from the end of the board, and on which side of the last eye?",
    views: [
      {
        sheet: "board",
        raise: 0,
        points: [
          {
            part: "lock",
            text: `Lock, its middle ${facts.len(alongMm)} from the left end of the board, seen from the room.`,
          },
          {
            part: `eye-${last}`,
            text: "Last eye, over the last column. It turns that cord; the lock cannot serve for it.",
          },
          {
            part: `cord-${last === 1 ? grid.columns.length : 1}`,
            text: "The cord from furthest away runs along the board through every eye to the lock.",
          },
          { part: "board", text: `Board, ${facts.len(board.lengthMm)} long: wood round every screw.` },
        ],
      },
    ],
    figures: [
      ...facts.figure(locked, "rig.seat-from"),
      ...facts.figure(locked, "rig.seat-to"),
      ...facts.figure(locked, "rig.entry-climb"),
    ],
    reason:
      "The housing clears the eye and the end of the board, and between eye and roller each cord runs straight for a bit: then it lies level and cannot rub on the housing. As near to the edge as that allows, a hand finds the tail beside the cloth.",
    cite: cite("lock-instructions", "clear of the last eye, cords entering straight"),
  };
});
