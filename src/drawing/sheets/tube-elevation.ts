import { headYMm } from "../../shade-plan/index.ts";
import type { Point, Primitive, Role } from "../model.ts";
import type { TubeSheetInput } from "./lift-input.ts";
import { line } from "./shapes.ts";

/** Thickness of a flange as drawn, mm. */
const FLANGE_MM = 2.5;

/** The tube's axis below the top line at a place across the shade, mm: it follows the board. */
export function axisYMm({ shade }: TubeSheetInput, xMm: number): number {
  return headYMm(shade.size, xMm) + shade.board.thicknessMm + shade.lift.tube.axisMm;
}

/** The cords of a tube, straight up from their bottom rings to the axis of the tube; spools are drawn over them. */
export function tubeCords(
  input: TubeSheetInput,
  across: (xMm: number) => number,
  bottomRingYMm: (xMm: number) => number,
): Primitive[] {
  return input.shade.lift.cords.map((cord) => {
    const x = across(cord.columnX);
    const points: Point[] = [
      [x, bottomRingYMm(cord.columnX)],
      [x, axisYMm(input, cord.columnX)],
    ];
    return line("cord", points, { cord: cord.number, part: `cord-${cord.number}` });
  });
}

/** Tube, supports, spools and drive under the board, seen from the front or from the back. */
export function tubeElevation(input: TubeSheetInput, across: (xMm: number) => number): Primitive[] {
  const { lift } = input.shade;
  const { tube, drive } = lift;
  /** From one place across the shade to another, from above the axis to below it: slanted where the board slopes. */
  const slab = (
    role: Role,
    [fromMm, toMm]: [number, number],
    [aboveMm, belowMm]: [number, number],
    part: string,
  ): Primitive => {
    const at = (xMm: number, offMm: number): Point => [across(xMm), axisYMm(input, xMm) + offMm];
    const points = [at(fromMm, -aboveMm), at(toMm, -aboveMm), at(toMm, belowMm), at(fromMm, belowMm)];
    return line(role, points, { part, closed: true });
  };
  const round = (mm: number): [number, number] => [mm / 2, mm / 2];
  const about = (xMm: number, lengthMm: number): [number, number] => [xMm - lengthMm / 2, xMm + lengthMm / 2];
  return [
    ...lift.supports.map(({ number, xMm }) =>
      slab(
        "tubeSupport",
        about(xMm, lift.supportLengthMm),
        [tube.axisMm, tube.diameterMm * 0.8],
        `support-${number}`,
      ),
    ),
    slab("tube", [tube.fromMm, tube.toMm], round(tube.diameterMm), "tube"),
    ...lift.spools.flatMap(({ number, xMm, lengthMm, coreMm, flangeMm }) => {
      const part = `spool-${number}`;
      const [from, to] = about(xMm, lengthMm);
      const flange = Math.min(FLANGE_MM, lengthMm / 3);
      const plate = (a: number) => slab("spool", [a, a + flange], round(flangeMm), part);
      return [slab("spool", [from, to], round(coreMm), part), plate(from), plate(to - flange)];
    }),
    slab("drive", about(drive.xMm, drive.lengthMm), round(drive.heightMm), "drive"),
  ];
}
