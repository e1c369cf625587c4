import { type FigureInput, figureRuleOf, type Worked } from "../../figures/index.ts";
import { headYMm } from "../../shade-plan/index.ts";
import { cite } from "../../sources/index.ts";
import type { LockInput } from "../lift-input.ts";
import { halfTail, raisedTail, TOP_ABOVE_FLOOR } from "../tail-rules.ts";
import { LOCK_CHOICE } from "./lock-parts.ts";

export interface TailPlan {
  loweredMm: number;
  raisedMm: number;
  /** Underside of the lock above the floor, where the height of the shade is known, mm. */
  lockAboveFloorMm?: number;
  endLoweredMm?: number;
  endRaisedMm?: number;
}

const TAIL = halfTail("the lock", cite("from-memory", "a tail ends half to two thirds down the window"));

const TAIL_RAISED = raisedTail("the lock");

/** The end of the tail at one end of the travel; under a head that is not level with the height of the head there. */
interface TailEnd {
  state: "lowered" | "raised";
  atHead: boolean;
}

const TAIL_END = figureRuleOf<TailEnd>()({
  id: ({ state }) => `rig.tail-end-${state}`,
  label: ({ state }) => `Tail’s end above the floor, ${state}`,
  symbol: "h",
  unit: "mm",
  formula: ({ atHead }) => (atHead ? "max(0, H − y − b − l − t)" : "max(0, H − b − l − t)"),
  inputs: ({ state, atHead }): Record<string, FigureInput<TailEnd>> => ({
    H: TOP_ABOVE_FLOOR,
    ...(atHead
      ? { y: ["mm", "head at the lock, below the top line", "opening/head", "figure:rig.seat-*"] }
      : {}),
    b: ["mm", "thickness of the board", "board/section"],
    l: ["mm", "height of the lock", ...LOCK_CHOICE],
    t: [
      "mm",
      `tail ${state}`,
      ...(state === "raised" ? ["figure:rig.tail-raised"] : ["lift/tailMm", "figure:rig.tail"]),
    ],
  }),
  cite: cite("geometry", "0: it lies on the floor"),
  compute: ({ H = 0, y = 0, b = 0, l = 0, t = 0 }) => Math.max(0, H - y - b - l - t),
});

/** The hanging cord: below the lock, lowered and raised, and its end above the floor. */
export function planTail(
  {
    shade,
    size,
    grid,
    liftParts: { lock },
  }: Pick<LockInput, "shade" | "size" | "grid"> & { liftParts: Pick<LockInput["liftParts"], "lock"> },
  /** Middle of the lock from the left finished edge. */
  lockX: number,
): Worked<TailPlan> {
  const { tailMm } = shade.making.lift;
  const own = tailMm === undefined ? TAIL.figure({ L: size.finishedLengthMm }) : undefined;
  const loweredMm = own?.value ?? tailMm ?? 0;
  const raised = TAIL_RAISED.figure({ t: loweredMm, v: Math.max(0, grid.travelMm) });
  const tails = [...(own === undefined ? [] : [own]), raised];
  const hanging = { loweredMm, raisedMm: raised.value };
  const { topAboveFloorMm } = size;
  if (topAboveFloorMm === undefined) return { values: hanging, workings: tails };
  const thickMm = shade.board.thicknessMm;
  const headMm = headYMm(size, lockX);
  const atHead = size.head !== undefined;
  const above = {
    H: topAboveFloorMm,
    ...(atHead ? { y: headMm } : {}),
    b: thickMm,
    l: lock.housingHeightMm,
  };
  const endLowered = TAIL_END.figure({ ...above, t: loweredMm }, { state: "lowered", atHead });
  const endRaised = TAIL_END.figure({ ...above, t: raised.value }, { state: "raised", atHead });
  return {
    values: {
      ...hanging,
      lockAboveFloorMm: topAboveFloorMm - headMm - thickMm - lock.housingHeightMm,
      endLoweredMm: endLowered.value,
      endRaisedMm: endRaised.value,
    },
    workings: [...tails, endLowered, endRaised],
  };
}
