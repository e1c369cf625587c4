import { counted } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import { type ActionDrawing, type ActionInput, figureName, lengthsIn, word } from "./action-input.ts";
import { pinch } from "./hands.ts";
import { arc, arrow, put, shape, smooth, stroke } from "./kit.ts";

/** Ribs into their pockets from the side, or the bar into the hem: one half way in. */
export function drawSlideIn({ action, units }: ActionInput<"slide-in">): ActionDrawing {
  const { what, count, lengthMm } = action;
  const long = lengthMm === undefined ? "" : ` of ${lengthsIn(units)(lengthMm)}`;
  const words = `${what === "rib" ? counted(count, "rib") : "bar"}${long}`;
  return {
    title: what === "rib" ? "Slide the ribs in" : "Slide the bar into the hem",
    primitives: [...(what === "rib" ? pockets() : hem()), figureName([40, 71], words)],
    facts: [{ label: what === "rib" ? "Ribs" : "Bar", text: words }],
  };
}

const RIGHT = 60;

function cloth(): Primitive[] {
  return [
    shape("liningCloth", [
      [2, 4],
      [RIGHT, 4],
      [RIGHT, 64],
      [2, 64],
    ]),
    stroke("finishedEdge", [
      [2, 4],
      [2, 64],
      [RIGHT, 64],
      [RIGHT, 4],
    ]),
  ];
}

function pocket(y: number, tall: number): Primitive[] {
  const end: Point[] = arc([RIGHT, y + tall / 2], [1.8, tall / 2], -90, 270, 24);
  return [
    shape("sleeve", [
      [2, y],
      [RIGHT, y],
      [RIGHT, y + tall],
      [2, y + tall],
    ]),
    stroke("stitch", [
      [2, y],
      [RIGHT, y],
    ]),
    shape("wrongSide", end),
  ];
}

function rod(role: "rib" | "bar", y: number, tall: number): Primitive[] {
  return [
    shape(role, [
      [RIGHT, y],
      [RIGHT + 24, y],
      [RIGHT + 24, y + tall],
      [RIGHT, y + tall],
    ]),
    stroke("hidden", [
      [RIGHT - 30, y],
      [RIGHT, y],
    ]),
    stroke("hidden", [
      [RIGHT - 30, y + tall],
      [RIGHT - 30, y],
    ]),
    stroke("hidden", [
      [RIGHT - 30, y + tall],
      [RIGHT, y + tall],
    ]),
  ];
}

function pockets(): Primitive[] {
  return [
    ...cloth(),
    ...[12, 48].flatMap((y) => [
      ...pocket(y, 6),
      stroke("hidden", [
        [6, y + 3],
        [RIGHT - 3, y + 3],
      ]),
    ]),
    ...pocket(30, 6),
    ...rod("rib", 31.2, 3.4),
    ...put(pinch(), { at: [RIGHT + 22, 33], size: 0.62 }),
    ...arrow([
      [RIGHT + 20, 24],
      [RIGHT + 6, 24],
    ]),
    word([RIGHT + 3, 15.4], "closed by hand", "start"),
  ];
}

function hem(): Primitive[] {
  return [
    ...cloth(),
    ...pocket(44, 20),
    stroke("finishedEdge", [
      [2, 64],
      [RIGHT, 64],
    ]),
    ...rod("bar", 50, 8),
    stroke(
      "thread",
      smooth([
        [2, 46],
        [4, 48],
        [2, 50],
        [4, 52],
        [2, 54],
        [4, 56],
        [2, 58],
        [4, 60],
        [2, 62],
      ]),
    ),
    ...put(pinch(), { at: [RIGHT + 22, 54], size: 0.62 }),
    ...arrow([
      [RIGHT + 20, 41],
      [RIGHT + 6, 41],
    ]),
    word([10, 38], "bottom hem", "start"),
  ];
}
