import type { ShadePlan } from "../../plan/index.ts";
import { ribCount } from "../../shade-plan/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { cordStyle } from "../cord-style.ts";
import { paintHex } from "../paints.ts";
import type { PicturePoint } from "../picture/camera.ts";
import { drawCords } from "./back-cords.ts";
import { hangingControl } from "./hanging-control.ts";
import { type CleatSheetInput, isCleatSheet, isLockSheet, type LockSheetInput } from "./lift-input.ts";
import { shapeNow } from "./shape-now.ts";

/** A cord with its number and colour, or what hangs at the control side, as lines in space, mm as on the picture. */
export interface RigLine {
  /** Of a cord. */
  number?: number;
  colour?: string;
  points: PicturePoint[];
}

/** Cords lie this far behind the plane of the rings, mm. */
const BEHIND_MM = 3;

/** Cords from their lowest rings, and what hangs at the control side, at one height of the lowest row. */
export function pictureRig(shade: ShadePlan, units: UnitChoice, raise: number): RigLine[] {
  const input = { shade, units, raise };
  const lowestMm = (shade.grid.rows[0]?.yMm ?? 0) - raise * shade.grid.travelMm;
  const away = -shade.board.depthMm / 2;
  const control = hangingControl(input, raise).flatMap((one): RigLine[] =>
    one.kind === "polyline"
      ? [
          {
            points: [...one.points, ...(one.closed === true ? one.points.slice(0, 1) : [])].map(([x, y]) => [
              x,
              y,
              away,
            ]),
          },
        ]
      : [],
  );
  const alongBoard = isLockSheet(input) || isCleatSheet(input) ? input : undefined;
  return [...(alongBoard === undefined ? toSpools() : toExit(alongBoard)), ...control];

  /** Up the back and along the board, to the lock or over the last eye. */
  function toExit(corded: LockSheetInput | CleatSheetInput): RigLine[] {
    return drawCords(
      corded,
      (x) => x,
      () => lowestMm,
    ).map(({ number, points }) => ({
      ...coloured(number),
      points: points.map(([x, y]): PicturePoint => [x, y, -BEHIND_MM]),
    }));
  }

  function toSpools(): RigLine[] {
    return shade.lift.cords.map(({ number, columnX }) => ({
      ...coloured(number),
      points: [
        [columnX, lowestMm, -BEHIND_MM],
        [columnX, shade.board.thicknessMm, -BEHIND_MM],
      ],
    }));
  }
}

/** A batten bare on the face: from where to where it is seen, mm as on the picture. */
export interface BareBatten {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** Battens that lie on the face at one height. */
export function bareBattens(shade: ShadePlan, units: UnitChoice, raise: number): BareBatten[] {
  // Asked at every height: most shades have none, and their whole shape need not be worked out to learn that.
  if (ribCount(shade.form) === 0 || shade.form.ribs.face === "back") return [];
  return shapeNow({ shade, units, raise })
    .lines.filter(({ kind, seenFrom }) => kind === "rib" && seenFrom !== "back")
    .map(({ points }) => {
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
    });
}

function coloured(number: number): { number: number; colour: string } {
  return { number, colour: paintHex(cordStyle(number).paint, "light") };
}
