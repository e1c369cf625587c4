import { type Drawing, drawSheet, type Primitive, type Role } from "../../drawing/index.ts";
import type { ShadePlan } from "../../plan/index.ts";
import { lengthText, type UnitChoice } from "../../units/index.ts";

/** Clear wall between two windows, mm. */
export const BETWEEN_MM = 350;
/** Lines that belong to one shade's own sheet. */
const LEFT_OUT: ReadonlySet<Role> = new Set<Role>(["floor", "ghost"]);

export interface Standing {
  shade: ShadePlan;
  /** Left finished edge and top line in the elevation, mm. */
  xMm: number;
  topMm: number;
  widthMm: number;
  heightMm: number;
}

export interface RoomDrawing {
  drawing: Drawing;
  standing: Standing[];
}

/**
 * The windows of a room side by side to one scale, seen from the room, y downwards from the floor.
 * One whose height above the floor is not known hangs level with the highest that is.
 */
export function roomDrawing(
  title: string,
  shades: readonly ShadePlan[],
  units: UnitChoice,
  raise: number,
): RoomDrawing {
  const known = shades.flatMap((shade) => shade.size.topAboveFloorMm ?? []);
  const tallest = Math.max(0, ...shades.map((shade) => shade.size.finishedLengthMm));
  const level = known.length > 0 ? Math.max(...known) : tallest;
  const standing: Standing[] = [];
  let xMm = 0;
  for (const shade of shades) {
    const widest = Math.max(shade.size.finishedWidthMm, shade.size.openingWidthMm);
    const aside = (widest - shade.size.finishedWidthMm) / 2;
    standing.push({
      shade,
      xMm: xMm + aside,
      topMm: -(shade.size.topAboveFloorMm ?? level),
      widthMm: shade.size.finishedWidthMm,
      heightMm: shade.size.finishedLengthMm,
    });
    xMm += widest + BETWEEN_MM;
  }
  const right = xMm - BETWEEN_MM;
  const floor: Primitive[] =
    known.length === 0
      ? []
      : [
          {
            kind: "polyline",
            role: "floor",
            points: [
              [-BETWEEN_MM / 2, 0],
              [right + BETWEEN_MM / 2, 0],
            ],
          },
        ];
  return {
    standing,
    drawing: {
      id: "room",
      title,
      caption: "Seen from the room, to one scale.",
      primitives: [...standing.flatMap((one) => frontOf(one, units, raise)), ...floor],
      facts: standing.map(({ shade }) => ({
        label: shade.windowName,
        text: `${lengthText(shade.size.finishedWidthMm, units)} × ${lengthText(shade.size.finishedLengthMm, units)}`,
      })),
    },
  };
}

function frontOf({ shade, xMm, topMm }: Standing, units: UnitChoice, raise: number): Primitive[] {
  return drawSheet("front", { units }, shade, { raise }).primitives.flatMap((primitive) =>
    LEFT_OUT.has(primitive.role) ? [] : moved(primitive, xMm, topMm),
  );
}

/** Shapes move; measures and words stay on the shade's own page. */
function moved(primitive: Primitive, dx: number, dy: number): Primitive[] {
  if (primitive.kind === "polyline") {
    return [{ ...primitive, points: primitive.points.map(([x, y]) => [x + dx, y + dy] as const) }];
  }
  if (primitive.kind === "circle") {
    const [x, y] = primitive.centre;
    return [{ ...primitive, centre: [x + dx, y + dy] }];
  }
  return [];
}
