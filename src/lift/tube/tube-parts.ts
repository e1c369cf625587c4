import type { BoardPoint, DriveSeat, LiftTube, Spool, TubeSupport } from "../../shade-plan/index.ts";
import { acrossFromControl, stretchAcross } from "../control-frame.ts";
import { hasRoom } from "../gaps.ts";
import type { TubeInput } from "../lift-input.ts";
import { type PlacedSupports, placeSupports } from "./place-supports.ts";
import { type SeatedDrive, seatDrive } from "./seat-drive.ts";
import { levelFrame, tubeLine } from "./tube-line.ts";

/** Everything under the board, placed from the control side and told from the left finished edge. */
export interface TubeRig {
  tube: LiftTube;
  spools: Spool[];
  supports: TubeSupport[];
  drive: DriveSeat;
  seated: SeatedDrive;
  placed: PlacedSupports;
}

export function tubeRig({ shade, size, grid, liftParts }: TubeInput): TubeRig {
  const frame = levelFrame(shade.making.lift.controlSide, size);
  const { drive, spool, tube } = liftParts;
  const line = tubeLine(shade, size, grid.columns, { spoolMm: spool.lengthMm, driveMm: drive.lengthMm });
  const seated = seatDrive(line, liftParts.kind, shade.units.ruler);
  const placed = placeSupports(line, seated);
  const [fromMm, toMm] = stretchAcross(frame, [placed.tubeFromMm, placed.tubeToMm]);
  const zMm = shade.board.depthMm / 2;
  const xMm = acrossFromControl(frame, seated.atMm);
  return {
    tube: {
      id: tube.id,
      name: tube.name,
      diameterMm: tube.diameterMm,
      fromMm,
      toMm,
      lengthMm: toMm - fromMm,
      zMm,
      axisMm: liftParts.axisMm,
    },
    spools: grid.columns.map(({ number, xMm: at }) => ({
      number,
      xMm: at,
      lengthMm: spool.lengthMm,
      coreMm: spool.coreMm,
      flangeMm: spool.flangeMm,
    })),
    supports: placed.supportsMm
      .map((at) => acrossFromControl(frame, at))
      .sort((a, b) => a - b)
      .map((at, i) => ({ number: i + 1, xMm: at })),
    drive: {
      id: drive.id,
      name: drive.name,
      xMm,
      zMm,
      lengthMm: drive.lengthMm,
      heightMm: drive.heightMm,
      depthMm: drive.depthMm,
      place: seated.place,
      feasibleMm: seated.tried
        .filter(hasRoom)
        .map((gap) => stretchAcross(frame, [gap.fromMm, Math.max(gap.fromMm, gap.toMm)]))
        .sort((a, b) => a[0] - b[0]),
      forced: seated.forced,
      screwsMm: screwPositions(drive, xMm, zMm),
      ...(drive.massMaxKg === undefined ? {} : { massMaxKg: drive.massMaxKg }),
    },
    seated,
    placed,
  };
}

/** One row of screws up to three, two rows from four, within the drive's own footprint. */
function screwPositions(
  { screws, lengthMm, depthMm }: { screws: number; lengthMm: number; depthMm: number },
  xMm: number,
  zMm: number,
): BoardPoint[] {
  const rows = screws > 3 ? 2 : 1;
  const inRow = Math.ceil(screws / rows);
  return Array.from({ length: screws }, (_, i) => {
    const along = inRow === 1 ? 0 : (i % inRow) / (inRow - 1) - 0.5;
    const row = rows === 1 ? 0 : Math.floor(i / inRow) - 0.5;
    return { xMm: xMm + along * 0.7 * lengthMm, zMm: zMm + row * 0.6 * depthMm };
  });
}
