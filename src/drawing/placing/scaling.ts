import type { Point } from "../model.ts";
import type { PlacedCommon } from "../placed.ts";

/** What placing needs to know: model to paper, and the factor on everything that is sized on paper. */
export interface Scaling {
  scale: number;
  textScale: number;
}

export function toPaper(at: Point, { scale, textScale }: Scaling, shift: Point = [0, 0]): Point {
  return [at[0] * scale + shift[0] * textScale, at[1] * scale + shift[1] * textScale];
}

/** Ref fields, role and cord of a primitive, without empty ones. */
export function commonOf(from: PlacedCommon): PlacedCommon {
  const { role, cord, figure, field, part } = from;
  return {
    role,
    ...(cord === undefined ? {} : { cord }),
    ...(figure === undefined ? {} : { figure }),
    ...(field === undefined ? {} : { field }),
    ...(part === undefined ? {} : { part }),
  };
}
