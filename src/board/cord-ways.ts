import { EYE_OPENING, type Eye } from "../job/index.ts";
import type { BoardPoint, Lift } from "../shade-plan/index.ts";

/** One cord on its way along the underside of the board. */
export interface CordWay {
  name: string;
  path: readonly BoardPoint[];
  /** Half of the strip that it takes up across the board, mm. */
  halfMm: number;
  /** From the underside of the board down to it, mm. */
  belowMm: number;
}

/** A piece of the board, seen from below: along it and from the wall, mm. */
export interface BoardPatch {
  fromMm: number;
  toMm: number;
  nearMm: number;
  farMm: number;
}

/** Lower edge of the opening of a screw eye, as a share of its outside diameter: its wire is as thick all round. */
const LOWER_EDGE = (1 + EYE_OPENING.value) / 2;

/** The ways of all cords that run along the board: none under a tube but those of a top rail. */
export function cordWays(lift: Lift, eye: Pick<Eye, "outsideDiameterMm">): CordWay[] {
  const cordMm = lift.cordDiameterMm;
  const inEyeMm = (diameterMm: number) => LOWER_EDGE * diameterMm - cordMm;
  const rail = (lift.topRail?.cords ?? []).map(
    ({ column, path }): CordWay => ({
      name: `the rail’s cord of column ${column}`,
      path,
      halfMm: cordMm / 2,
      belowMm: inEyeMm(eye.outsideDiameterMm),
    }),
  );
  switch (lift.takeUp) {
    case "lock": {
      const { entry } = lift;
      const belowMm = Math.min(entry.eyeLevelMm, entry.mouthLevelMm) - cordMm / 2;
      const own = lift.cords.map(
        ({ number, path }): CordWay => ({ name: `cord ${number}`, path, halfMm: cordMm / 2, belowMm }),
      );
      return [...own, ...rail];
    }
    case "cleat": {
      const { turn } = lift;
      const own = lift.cords.map(
        ({ number, columnX }): CordWay => ({
          name: `cord ${number}`,
          path: [{ xMm: columnX, zMm: turn.zMm }, turn],
          halfMm: (EYE_OPENING.value * turn.diameterMm) / 2,
          belowMm: inEyeMm(Math.min(lift.eyeDiameterMm, turn.diameterMm)),
        }),
      );
      return [...own, ...rail];
    }
    case "tube":
      return rail;
  }
}

/** Does a cord pass over this piece of the board? */
export function passesOver({ path, halfMm }: CordWay, { fromMm, toMm, nearMm, farMm }: BoardPatch): boolean {
  return path.some((b, i) => {
    const a = path[i - 1];
    if (a === undefined) return false;
    const [left, right] = a.xMm <= b.xMm ? [a, b] : [b, a];
    const [from, to] = [Math.max(fromMm, left.xMm), Math.min(toMm, right.xMm)];
    if (from > to) return false;
    const at = (xMm: number) =>
      right.xMm === left.xMm
        ? left.zMm
        : left.zMm + ((right.zMm - left.zMm) * (xMm - left.xMm)) / (right.xMm - left.xMm);
    const [one, other] = [at(from), at(to)];
    return Math.min(one, other) - halfMm < farMm && Math.max(one, other) + halfMm > nearMm;
  });
}
