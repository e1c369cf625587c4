import type { Primitive } from "../model.ts";
import { type CleatSheetInput, cordExit, type LockSheetInput } from "./lift-input.ts";
import { callout, line } from "./shapes.ts";
import type { SheetInput } from "./sheet-input.ts";

const KNOB_MM = 16;

/** Lower end of the hanging cords, mm below the top line: it sinks as the shade rises. */
export function tailEndYMm(input: LockSheetInput | CleatSheetInput, raise: number): number {
  const { lift } = input.shade;
  return cordExit(input).yMm + lift.tailLoweredMm + raise * (lift.tailRaisedMm - lift.tailLoweredMm);
}

/** The cords of the control side, together: hidden behind the cloth, plain below it. */
export function hangingTail(
  input: LockSheetInput | CleatSheetInput,
  raise: number,
  across: (xMm: number) => number,
): Primitive[] {
  const { lift, grid } = input.shade;
  const exit = cordExit(input);
  const x = across(exit.xMm);
  const top = exit.yMm;
  const end = tailEndYMm(input, raise);
  const hemY = grid.bottomSectionMm + (grid.rows[0]?.yMm ?? grid.topSectionMm) - raise * grid.travelMm;
  const primitives: Primitive[] = [
    line(
      "hidden",
      [
        [x, top],
        [x, Math.min(end, hemY)],
      ],
      { part: "tail" },
    ),
  ];
  if (end > hemY)
    primitives.push(
      line(
        "cord",
        [
          [x, hemY],
          [x, end],
        ],
        { part: "tail" },
      ),
    );
  primitives.push(knob(x, end));
  const toRight = lift.controlSide === "right";
  if (end > hemY + KNOB_MM)
    primitives.push({
      ...callout([x, end], "cords", [toRight ? 5 : -5, 3], { part: "tail" }),
      ...(isOverGlass(input, end) ? { ground: "glass" } : {}),
    });
  return primitives;
}

function isOverGlass({ shade }: SheetInput, yMm: number): boolean {
  const { openingTopMm, openingHeightMm } = shade.size;
  return openingTopMm !== undefined && yMm > openingTopMm && yMm < openingTopMm + openingHeightMm;
}

/** The knob that joins the cords at their lower end. */
export function knob(x: number, y: number): Primitive {
  const half = KNOB_MM * 0.4;
  return {
    kind: "polyline",
    role: "label",
    closed: true,
    part: "tail",
    points: [
      [x, y],
      [x + half * 0.55, y + KNOB_MM * 0.35],
      [x + half, y + KNOB_MM * 1.3],
      [x + half * 0.5, y + KNOB_MM * 1.6],
      [x - half * 0.5, y + KNOB_MM * 1.6],
      [x - half, y + KNOB_MM * 1.3],
      [x - half * 0.55, y + KNOB_MM * 0.35],
    ],
  };
}
