import { fineText } from "../../units/index.ts";
import type { Point, Primitive } from "../model.ts";
import type { LockSheetInput } from "./lift-input.ts";
import { outwards } from "./lock-window.ts";
import { line, note } from "./shapes.ts";

/** Drawn so many times as large as the rest. */
export const GAP_TIMES = 4;
const WALL_MM = 1.5;
const ROLLER_END_MM = 3;
const BESIDE_MM = 0.6;

/** From the housing outwards the gap at a roller's end, the roller, and a cord beside it, all to one scale. */
export function drawEndGap({ shade }: LockSheetInput, [x, y]: Point): Primitive[] {
  const { lift } = shade;
  const { endGapMm, cordDiameterMm, entry } = lift;
  const way = outwards(lift);
  const height = entry.rollerMm;
  const at = (mm: number) => x + way * mm * GAP_TIMES;
  if (endGapMm === undefined) {
    return [
      note([x, y + height / 2], "end gap: measure", { anchor: way > 0 ? "start" : "end", yields: true }),
    ];
  }
  const box = (role: "housing" | "roller", fromMm: number, toMm: number, part: string): Primitive => {
    const [from, to] = [at(fromMm), at(toMm)];
    const points: Point[] = [
      [from, y],
      [to, y],
      [to, y + height],
      [from, y + height],
    ];
    return line(role, points, { part, closed: true });
  };
  const rollerMm = WALL_MM + endGapMm;
  const cordMm = rollerMm + ROLLER_END_MM + BESIDE_MM + cordDiameterMm / 2;
  return [
    box("housing", 0, WALL_MM, "lock"),
    box("roller", rollerMm, rollerMm + ROLLER_END_MM, "smooth-roller"),
    {
      kind: "circle",
      role: "cord",
      centre: [at(cordMm), y + height / 2],
      radiusMm: (cordDiameterMm * GAP_TIMES) / 2,
      part: "cord-1",
    },
    note([at(WALL_MM + endGapMm / 2), y], `gap ${fineText(endGapMm)}`, { shiftPaperMm: [0, -3] }),
    note([at(cordMm), y + height], `cord ${fineText(cordDiameterMm)}`, {
      shiftPaperMm: [0, 3.4],
      yields: true,
    }),
  ];
}
