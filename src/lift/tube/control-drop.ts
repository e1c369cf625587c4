import type { WorkingBook } from "../../figures/index.ts";
import { cite, sourced } from "../../sources/index.ts";
import type { TubeInput } from "./tube-input.ts";

/** A loop or a wand ends here where the height of the window is known: low enough to reach, above most that climb. */
const ABOVE_FLOOR = sourced(
  1600,
  "mm",
  cite("from-memory", "the higher of the two published heights for what hangs"),
);
/** Less than this is nothing to take hold of. */
const SHORTEST_MM = 150;

/** Axis of the drive above the floor, where the height of the window is known, mm. */
export function driveAboveFloorMm({ resolved, size, liftParts }: TubeInput): number | undefined {
  return size.topAboveFloorMm === undefined
    ? undefined
    : size.topAboveFloorMm - resolved.board.thicknessMm - liftParts.axisMm;
}

/** How far a loop or a wand hangs below its drive, mm: as set, else half the shade or down to its height above the floor. */
export function controlDrop(
  input: TubeInput,
  setMm: number | undefined,
  spec: { id: string; label: string; symbol: string },
  book: WorkingBook,
): number {
  if (setMm !== undefined) return setMm;
  const length = [input.size.finishedLengthMm, "mm", "finished length"] as const;
  const above = driveAboveFloorMm(input);
  if (above === undefined || above - ABOVE_FLOOR.value <= SHORTEST_MM) {
    return book.figure(spec.id, {
      ...spec,
      unit: "mm",
      formula: "L / 2",
      given: { L: length },
      cite: cite("our-choice", "half the finished length"),
      compute: ({ L }) => L / 2,
    });
  }
  return book.figure(spec.id, {
    ...spec,
    unit: "mm",
    formula: "min(L / 2, H − h)",
    given: {
      L: length,
      H: [above, "mm", "axis of the drive above the floor"],
      h: [ABOVE_FLOOR.value, "mm", "its end above the floor"],
    },
    cite: ABOVE_FLOOR.cite,
    compute: ({ L, H, h }) => Math.min(L / 2, H - h),
  });
}

/** Its lower end above the floor, where that is known; 0 where it lies on the floor, mm. */
export function endAboveFloor(
  input: TubeInput,
  dropMm: number,
  spec: { id: string; label: string },
  book: WorkingBook,
): number | undefined {
  const above = driveAboveFloorMm(input);
  if (above === undefined) return undefined;
  return book.figure(spec.id, {
    ...spec,
    symbol: "e",
    unit: "mm",
    formula: "max(0, H − p)",
    given: {
      H: [above, "mm", "axis of the drive above the floor"],
      p: [dropMm, "mm", "down to its end"],
    },
    cite: cite("geometry", "0: it lies on the floor"),
    compute: ({ H, p }) => Math.max(0, H - p),
  });
}
