import { type Plan, plan, type ShadePlan } from "../src/plan/index.ts";
import { jobWith } from "./job-with.ts";

/**
 * A shade that hangs, 900 mm wide and measured on its back, with three rows that begin 190, 390 and 590 mm above its hem at
 * the left; with what is given at the right. Its columns stand at 50, 450 and 850 mm.
 */
export function withRowsToRight(rowsFromHemRightMm: number[]): { planned: Plan; shade: ShadePlan } {
  const planned = plan(
    jobWith(
      {
        opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 900 },
        shade: {
          mount: "to-size",
          making: { lift: { kind: "cord-lock" } },
          existing: {
            tasks: ["restring"],
            rowsFromHemMm: [190, 390, 590],
            rowsFromHemRightMm,
            columnsFromLeftMm: [50, 450, 850],
          },
        },
      },
      { units: { system: "metric", ruler: "1 mm" } },
    ),
  );
  const [shade] = planned.shades;
  if (shade === undefined) throw new Error("no shade");
  return { planned, shade };
}
