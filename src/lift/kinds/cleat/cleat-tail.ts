import {
  type Figure,
  type FigureInput,
  figureRule,
  figureRuleOf,
  type Worked,
} from "../../../figures/index.ts";
import { headYMm, type TurnEye } from "../../../shade-plan/index.ts";
import { cite, sourced } from "../../../sources/index.ts";
import type { CleatInput } from "../../lift-input.ts";
import { halfTail, raisedTail, TAIL_RESTS_ON, TOP_ABOVE_FLOOR } from "../../tail-rules.ts";

/** Cord that one figure of eight takes on a cleat of about 100 mm. */
export const FIGURE_EIGHT = sourced(
  250,
  "mm",
  cite("from-memory", "a figure of eight on a cleat of 4 in takes about 10 in of cord"),
);

export interface CleatTail {
  loweredMm: number;
  raisedMm: number;
  /** Lower edge of the last eye above the floor, and from there down to the cleat, where the height is known, mm. */
  eyeAboveFloorMm?: number;
  toCleatMm?: number;
  endLoweredMm?: number;
  endRaisedMm?: number;
  /** What is left to wind with the shade raised, mm. */
  windMm?: number;
}

const TO_CLEAT = figureRuleOf<{ atHead: boolean }>()({
  id: "rig.to-cleat",
  label: "Last eye down to the cleat",
  symbol: "D",
  unit: "mm",
  formula: ({ atHead }) => (atHead ? "H − y − b − e − C" : "H − b − e − C"),
  inputs: ({ atHead }): Record<string, FigureInput<{ atHead: boolean }>> => ({
    H: TOP_ABOVE_FLOOR,
    ...(atHead
      ? { y: ["mm", "head at the last eye, below the top line", "opening/head", "lift/controlSide"] }
      : {}),
    b: ["mm", "thickness of the board", "board/section"],
    e: ["mm", "height of the last eye", "lift/turnEye", "lift/eye"],
    C: ["mm", "cleat above the floor", "lift/cleatAboveFloorMm"],
  }),
  cite: cite("geometry"),
  compute: ({ H = 0, y = 0, b = 0, e = 0, C = 0 }) => H - y - b - e - C,
});

const TAIL_TO_CLEAT = figureRule({
  id: "rig.tail",
  label: "Tail below the last eye, shade lowered",
  symbol: "t",
  unit: "mm",
  formula: "max(0, D) + w",
  inputs: {
    D: ["mm", "last eye down to the cleat", "figure:rig.to-cleat"],
    w: ["mm", "one figure of eight"],
  },
  restsOn: TAIL_RESTS_ON,
  cite: FIGURE_EIGHT.cite,
  note: "no longer than this: what hangs below the cleat is what a child can reach",
  compute: ({ D, w }) => Math.max(0, D) + w,
});

const TAIL_HALF = halfTail(
  "the last eye",
  cite("from-memory", "half way down, where the height above the floor is not known"),
);

const TAIL_RAISED = raisedTail("the last eye");

const TAIL_END = figureRuleOf<"lowered" | "raised">()({
  id: (state) => `rig.tail-end-${state}`,
  label: (state) => `Tail’s end above the floor before it is wound, ${state}`,
  symbol: "h",
  unit: "mm",
  formula: "max(0, C + D − t)",
  inputs: (state) => ({
    C: ["mm", "cleat above the floor", "lift/cleatAboveFloorMm"],
    D: ["mm", "last eye down to the cleat", "figure:rig.to-cleat"],
    t:
      state === "raised"
        ? ["mm", "tail raised", "figure:rig.tail-raised"]
        : ["mm", "tail lowered", "lift/tailMm", "figure:rig.tail"],
  }),
  cite: cite("geometry", "0: it lies on the floor"),
  compute: ({ C, D, t }) => Math.max(0, C + D - t),
});

const WIND = figureRule({
  id: "rig.cord-to-wind",
  label: "Cord to wind on the cleat, shade raised",
  symbol: "w",
  unit: "mm",
  formula: "max(0, u − max(0, D))",
  inputs: {
    u: ["mm", "tail raised", "figure:rig.tail-raised"],
    D: ["mm", "last eye down to the cleat", "figure:rig.to-cleat"],
  },
  cite: cite("geometry", "all that hangs below the cleat"),
  compute: ({ u, D }) => Math.max(0, u - Math.max(0, D)),
});

/** The hanging cords: below the last eye, lowered and raised, and how they stand to the cleat. */
export function cleatTail({ shade, size, grid }: CleatInput, turn: TurnEye): Worked<CleatTail> {
  const { tailMm, cleatAboveFloorMm } = shade.making.lift;
  const { topAboveFloorMm } = size;
  const workings: Figure[] = [];
  const written = (figure: Figure): number => {
    workings.push(figure);
    return figure.value;
  };
  const down =
    topAboveFloorMm === undefined
      ? undefined
      : written(
          TO_CLEAT.figure(
            {
              H: topAboveFloorMm,
              ...(size.head === undefined ? {} : { y: headYMm(size, turn.xMm) }),
              b: shade.board.thicknessMm,
              e: turn.diameterMm,
              C: cleatAboveFloorMm,
            },
            { atHead: size.head !== undefined },
          ),
        );
  const loweredMm =
    tailMm ??
    written(
      down === undefined
        ? TAIL_HALF.figure({ L: size.finishedLengthMm })
        : TAIL_TO_CLEAT.figure({ D: down, w: FIGURE_EIGHT.value }),
    );
  const raisedMm = written(TAIL_RAISED.figure({ t: loweredMm, v: Math.max(0, grid.travelMm) }));
  if (down === undefined) return { values: { loweredMm, raisedMm }, workings };
  const end = (state: "lowered" | "raised", t: number) =>
    written(TAIL_END.figure({ C: cleatAboveFloorMm, D: down, t }, state));
  const values: CleatTail = {
    loweredMm,
    raisedMm,
    eyeAboveFloorMm: cleatAboveFloorMm + down,
    toCleatMm: down,
    endLoweredMm: end("lowered", loweredMm),
    endRaisedMm: end("raised", raisedMm),
    windMm: written(WIND.figure({ u: raisedMm, D: down })),
  };
  return { values, workings };
}
