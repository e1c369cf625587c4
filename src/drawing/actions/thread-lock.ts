import { listed } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import { cordTag } from "../sheets/shapes.ts";
import { type ActionDrawing, type ActionInput, word } from "./action-input.ts";
import { arrow, shape, stroke } from "./kit.ts";

const [LEFT, RIGHT] = [30, 70];
const MIDDLE = (LEFT + RIGHT) / 2;
const GAP = 4;
const OUT = 18;

type Threaded = ActionInput<"thread-lock">["action"]["cords"][number];

/** The lock from below, slots from the wall (at the foot) to the room: each cord from its own end, with its turn. */
export function drawThreadLock({ action }: ActionInput<"thread-lock">): ActionDrawing {
  const { slots, cords, facing } = action;
  const tall = Math.max(26, slots.length * 15, cords.length * 9);
  const [top, bottom] = [14, 14 + tall];
  const slotTall = tall / Math.max(1, slots.length);
  const bottomOf = (slot: number) => bottom - slots.indexOf(slot) * slotTall;
  const within = (slot: number) =>
    cords.filter((cord) => cord.slot === slot).sort((a, b) => a.number - b.number);
  const yOf = (cord: Threaded) => {
    const inside = within(cord.slot);
    return bottomOf(cord.slot) - (slotTall * (inside.indexOf(cord) + 1)) / (inside.length + 1);
  };
  return {
    title: "Thread the lock",
    primitives: [
      shape("housing", [
        [LEFT - 3, top - 3],
        [RIGHT + 3, top - 3],
        [RIGHT + 3, bottom + 3],
        [LEFT - 3, bottom + 3],
      ]),
      shape("label", [
        [LEFT, top],
        [RIGHT, top],
        [RIGHT, bottom],
        [LEFT, bottom],
      ]),
      ...rollers(facing, top, bottom),
      ...slots.slice(1).map((slot) =>
        stroke("dividerWire", [
          [LEFT, bottomOf(slot)],
          [RIGHT, bottomOf(slot)],
        ]),
      ),
      ...cords.flatMap((cord, i) => threaded(cord, i + 1, yOf(cord))),
      word([MIDDLE, top - 7], "room"),
      word([MIDDLE, bottom + 8], "wall"),
    ],
    facts: [
      { label: "Order", text: listed(cords.map(({ number }) => String(number))) },
      ...cords.map(({ number, from, slot }) => ({
        label: `Cord ${number}`,
        text: `from the ${from} end into slot ${slot}`,
      })),
    ],
  };
}

function rollers(facing: "left" | "right", top: number, bottom: number): Primitive[] {
  const box = (role: "roller" | "toothedRoller", from: number, to: number) =>
    shape(role, [
      [from, top],
      [to, top],
      [to, bottom],
      [from, bottom],
    ]);
  const wide = 11;
  const side = facing === "right" ? 1 : -1;
  const inner = MIDDLE + (side * GAP) / 2;
  const teeth = [0.2, 0.4, 0.6, 0.8].map((share) => {
    const x = inner + side * wide * share;
    return stroke("toothedRoller", [
      [x, top],
      [x, bottom],
    ]);
  });
  const other = MIDDLE - (side * GAP) / 2;
  return [
    box("toothedRoller", Math.min(inner, inner + side * wide), Math.max(inner, inner + side * wide)),
    ...teeth,
    box("roller", Math.min(other, other - side * wide), Math.max(other, other - side * wide)),
  ];
}

function threaded({ number, from }: Threaded, turn: number, y: number): Primitive[] {
  const way = from === "left" ? -1 : 1;
  const start: Point = [MIDDLE + way * (20 + OUT), y];
  const ref = { cord: number, part: `cord-${number}` };
  return [
    stroke("cord", [start, [MIDDLE, y]], ref),
    ...arrow(
      [
        [MIDDLE + way * 30, y],
        [MIDDLE + way * 24.6, y],
      ],
      3.2,
    ),
    { kind: "marker", role: "cord", shape: "dot", at: [MIDDLE, y], paperMm: 1.8, ...ref },
    { ...cordTag(start, number, [way * 2.4, 0]), stack: from } as Primitive,
    word([start[0] + way * 10, y], ordinal(turn), way < 0 ? "end" : "start"),
  ];
}

function ordinal(turn: number): string {
  const tens = turn % 100;
  const end = tens > 10 && tens < 14 ? "th" : (["th", "st", "nd", "rd"][turn % 10] ?? "th");
  return `${turn}${end}`;
}
