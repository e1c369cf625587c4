import { type Figure, figureRuleOf, type Worked } from "../../figures/index.ts";
import { headYMm } from "../../shade-plan/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import type { TubeInput } from "../lift-input.ts";

/** A loop or a wand ends here where the height of the window is known: low enough to reach, above most that climb. */
const ABOVE_FLOOR = sourced(
  1600,
  "mm",
  cite("from-memory", "the higher of the two published heights for what hangs"),
);
/** Less than this is nothing to take hold of. */
const SHORTEST_MM = 150;

/** What hangs from a drive: in words and in the ids of its figures, and the setting of its length. */
export interface HangingControl {
  what: "wand" | "loop";
  key: "wandMm" | "loopDropMm";
  /** As the labels of its length and of its lower end begin. */
  drop: string;
  end: string;
}

const DROP = {
  id: ({ what }: HangingControl) => `rig.${what}`,
  label: ({ drop }: HangingControl) => drop,
  symbol: "p",
  unit: "mm",
  restsOn: ["lift/wandMm", "lift/loopDropMm"],
} as const;
const LENGTH = ["mm", "finished length", "figure:measure.finished-length"] as const;
const ABOVE = [
  "mm",
  "axis of the drive above the floor",
  "opening/sillAboveFloorMm",
  "opening/head",
  "board/section",
  "figure:rig.tube-axis",
  "opening/heightsMm",
  "figure:measure.finished-length",
] as const;

const HALF_THE_LENGTH = figureRuleOf<HangingControl>()({
  ...DROP,
  formula: "L / 2",
  inputs: { L: LENGTH },
  cite: cite("our-choice", "half the finished length"),
  compute: ({ L }) => L / 2,
});

const DOWN_TO_ITS_HEIGHT = figureRuleOf<HangingControl>()({
  ...DROP,
  formula: "min(L / 2, H − h)",
  inputs: { L: LENGTH, H: ABOVE, h: ["mm", "its end above the floor"] },
  cite: ABOVE_FLOOR.cite,
  compute: ({ L, H, h }) => Math.min(L / 2, H - h),
});

const END = figureRuleOf<HangingControl>()({
  id: ({ what }) => `rig.${what}-end`,
  label: ({ end }) => `${end} above the floor`,
  symbol: "e",
  unit: "mm",
  formula: "max(0, H − p)",
  inputs: ({ what, key }) => ({
    H: ABOVE,
    p: ["mm", "down to its end", `lift/${key}`, `figure:rig.${what}`],
  }),
  cite: cite("geometry", "0: it lies on the floor"),
  compute: ({ H, p }) => Math.max(0, H - p),
});

/** Axis of the drive below the top line: head, board and tube; it hangs where the head is over it, mm. */
export function driveBelowTopMm({ shade, size, liftParts }: TubeInput, driveX: number): number {
  return headYMm(size, driveX) + shade.board.thicknessMm + liftParts.axisMm;
}

/** The same above the floor, where the height of the window is known, mm. */
export function driveAboveFloorMm(input: TubeInput, driveX: number): number | undefined {
  const { topAboveFloorMm } = input.size;
  return topAboveFloorMm === undefined ? undefined : topAboveFloorMm - driveBelowTopMm(input, driveX);
}

/** How far a loop or a wand hangs below its drive, mm: as set, else half the shade or down to its height above the floor. */
export function controlDrop(input: TubeInput, of: HangingControl, driveX: number): Worked<number> {
  const setMm = input.shade.making.lift[of.key];
  if (setMm !== undefined) return { values: setMm, workings: [] };
  const L = input.size.finishedLengthMm;
  const above = driveAboveFloorMm(input, driveX);
  const drop =
    above === undefined || above - ABOVE_FLOOR.value <= SHORTEST_MM
      ? HALF_THE_LENGTH.figure({ L }, of)
      : DOWN_TO_ITS_HEIGHT.figure({ L, H: above, h: ABOVE_FLOOR.value }, of);
  return { values: drop.value, workings: [drop] };
}

/** Its lower end above the floor, where that is known; 0 where it lies on the floor, mm. */
export function endAboveFloor(
  input: TubeInput,
  dropMm: number,
  of: HangingControl,
  driveX: number,
): Figure | undefined {
  const above = driveAboveFloorMm(input, driveX);
  return above === undefined ? undefined : END.figure({ H: above, p: dropMm }, of);
}
