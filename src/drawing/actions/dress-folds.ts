import { counted } from "../../words/index.ts";
import type { Point, Primitive } from "../model.ts";
import {
  type ActionDrawing,
  type ActionInput,
  figureName,
  lengthsIn,
  measured,
  stacked,
} from "./action-input.ts";
import { pinch } from "./hands.ts";
import { arrow, put, shape, smooth, stroke } from "./kit.ts";

const MOST = 6;
const BACK = 54;
const FRONT = 26;

/** From the side: each fold drawn forward between the fingers, all of them in front of the rings. */
export function drawDressFolds({ action, units }: ActionInput<"dress-folds">): ActionDrawing {
  const raised = lengthsIn(units)(action.raisedMm);
  const shown = Math.min(MOST, Math.max(1, action.folds));
  const each = 44 / shown;
  const cloth: Point[] = [[BACK - 3, 10]];
  for (let i = 0; i < shown; i += 1) {
    const y = 16 + i * each;
    cloth.push(
      [FRONT + 6 + i * 1.5, y + each * 0.5],
      [FRONT + i * 1.5, y + each * 0.74],
      [FRONT + 6 + i * 1.5, y + each * 0.94],
      [BACK - 2, y + each * 0.84],
    );
  }
  cloth.push([BACK - 6, 70]);
  const held = 16 + Math.floor(shown / 2) * each + each * 0.74;
  const tip = FRONT + Math.floor(shown / 2) * 1.5;
  return {
    title: "Dress the folds",
    primitives: [
      shape("board", [
        [BACK - 3, 6],
        [78, 6],
        [78, 12],
        [BACK - 3, 12],
      ]),
      shape("wall", [
        [78, 2],
        [86, 2],
        [86, 78],
        [78, 78],
      ]),
      stroke("finishedEdge", smooth(cloth, false, 5)),
      ...Array.from(
        { length: shown },
        (_, i): Primitive => stroke("eye", circleAt([BACK + 0.4, 16 + i * each + each * 0.84])),
      ),
      stroke("cord", [
        [BACK + 1.6, 12],
        [BACK + 1.6, 68],
      ]),
      ...put(pinch(), { at: [tip - 0.6, held], flip: true, size: 0.58, deg: 6 }),
      ...arrow([
        [tip - 2, held - 11],
        [tip - 14, held - 11],
      ]),
      ...measured([94, 6], [94, 70], raised, [88, 84]),
      figureName([2, 84], counted(action.folds, "fold"), "start"),
      ...stacked([2, 66], ["forward, from", "the middle out"], { figure: false }),
    ],
    facts: [
      { label: "Folds", text: String(action.folds) },
      { label: "Raised height", text: raised },
    ],
  };
}

function circleAt([x, y]: Point): Point[] {
  return Array.from(
    { length: 17 },
    (_, i): Point => [x + 1.5 * Math.cos((i / 8) * Math.PI), y + 1.5 * Math.sin((i / 8) * Math.PI)],
  );
}
