import type { WorkingBook } from "../figures/index.ts";
import { cite } from "../sources/index.ts";
import type { LiftInput } from "./lift-input.ts";

export interface TailPlan {
  loweredMm: number;
  raisedMm: number;
  /** Underside of the lock above the floor, where the height of the shade is known, mm. */
  lockAboveFloorMm?: number;
  endLoweredMm?: number;
  endRaisedMm?: number;
}

/** The hanging cord: below the lock, lowered and raised, and its end above the floor. */
export function planTail(input: LiftInput, book: WorkingBook): TailPlan {
  const { resolved, size, grid, lock } = input;
  const loweredMm =
    resolved.making.lift.tailMm ??
    book.figure("rig.tail", {
      label: "Tail below the lock, shade lowered",
      symbol: "t",
      unit: "mm",
      formula: "L / 2",
      given: { L: [size.finishedLengthMm, "mm", "finished length"] },
      cite: cite("from-memory", "a tail ends half to two thirds down the window"),
      compute: ({ L }) => L / 2,
    });
  const raisedMm = book.figure("rig.tail-raised", {
    label: "Tail below the lock, shade raised",
    symbol: "u",
    unit: "mm",
    formula: "t + v",
    given: {
      t: [loweredMm, "mm", "tail lowered"],
      v: [Math.max(0, grid.travelMm), "mm", "travel of the bottom row"],
    },
    cite: cite("geometry", "what the shade gives up hangs below the lock"),
    compute: ({ t, v }) => t + v,
  });
  if (size.topAboveFloorMm === undefined) return { loweredMm, raisedMm };
  const lockAboveFloorMm = size.topAboveFloorMm - resolved.board.thicknessMm - lock.housingHeightMm;
  const end = (id: string, label: string, tailMm: number, tailLabel: string) =>
    book.figure(id, {
      label,
      symbol: "h",
      unit: "mm",
      formula: "max(0, H − b − l − t)",
      given: {
        H: [size.topAboveFloorMm ?? 0, "mm", "top line above the floor"],
        b: [resolved.board.thicknessMm, "mm", "thickness of the board"],
        l: [lock.housingHeightMm, "mm", "height of the lock"],
        t: [tailMm, "mm", tailLabel],
      },
      cite: cite("geometry", "0: it lies on the floor"),
      compute: ({ H, b, l, t }) => Math.max(0, H - b - l - t),
    });
  return {
    loweredMm,
    raisedMm,
    lockAboveFloorMm,
    endLoweredMm: end(
      "rig.tail-end-lowered",
      "Tail’s end above the floor, lowered",
      loweredMm,
      "tail lowered",
    ),
    endRaisedMm: end("rig.tail-end-raised", "Tail’s end above the floor, raised", raisedMm, "tail raised"),
  };
}
