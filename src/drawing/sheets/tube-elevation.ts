import type { Point, Primitive } from "../model.ts";
import type { TubeSheetInput } from "./lift-input.ts";
import { line, rect } from "./shapes.ts";

/** Thickness of a flange as drawn, mm. */
const FLANGE_MM = 2.5;

/** Height of the tube's axis below the top line, mm. */
export function axisYMm({ shade }: TubeSheetInput): number {
  return shade.board.thicknessMm + shade.lift.tube.axisMm;
}

/** The cords of a tube, straight up from their bottom rings to the axis of the tube; spools are drawn over them. */
export function tubeCords(
  input: TubeSheetInput,
  across: (xMm: number) => number,
  bottomRowYMm: number,
): Primitive[] {
  const axis = axisYMm(input);
  return input.shade.lift.cords.map((cord) => {
    const x = across(cord.columnX);
    const points: Point[] = [
      [x, bottomRowYMm],
      [x, axis],
    ];
    return line("cord", points, { cord: cord.number, part: `cord-${cord.number}` });
  });
}

/** Tube, supports, spools and drive under the board, seen from the front or from the back. */
export function tubeElevation(input: TubeSheetInput, across: (xMm: number) => number): Primitive[] {
  const { lift, board } = input.shade;
  const axis = axisYMm(input);
  const between = (a: number, b: number) => ({ x: Math.min(across(a), across(b)), width: Math.abs(b - a) });
  const { tube, drive } = lift;
  return [
    ...lift.supports.map((support) =>
      rect(
        "tubeSupport",
        {
          ...between(support.xMm - lift.supportLengthMm / 2, support.xMm + lift.supportLengthMm / 2),
          y: board.thicknessMm,
          height: tube.axisMm + tube.diameterMm * 0.8,
        },
        { part: `support-${support.number}` },
      ),
    ),
    rect(
      "tube",
      { ...between(tube.fromMm, tube.toMm), y: axis - tube.diameterMm / 2, height: tube.diameterMm },
      { part: "tube" },
    ),
    ...lift.spools.flatMap(({ number, xMm, lengthMm, coreMm, flangeMm }) => {
      const part = `spool-${number}`;
      const from = xMm - lengthMm / 2;
      const to = xMm + lengthMm / 2;
      const flange = Math.min(FLANGE_MM, lengthMm / 3);
      const plate = (a: number) =>
        rect("spool", { ...between(a, a + flange), y: axis - flangeMm / 2, height: flangeMm }, { part });
      return [
        rect("spool", { ...between(from, to), y: axis - coreMm / 2, height: coreMm }, { part }),
        plate(from),
        plate(to - flange),
      ];
    }),
    rect(
      "drive",
      {
        ...between(drive.xMm - drive.lengthMm / 2, drive.xMm + drive.lengthMm / 2),
        y: axis - drive.heightMm / 2,
        height: drive.heightMm,
      },
      { part: "drive" },
    ),
  ];
}
