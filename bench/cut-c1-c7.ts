import { HOPPER_C, meanByClass, stripProblem } from "../test/cutting/strips.ts";
import { costAfter } from "./cost-after.ts";
import type { Figure } from "./figure.ts";

/** Mean of the class means of height over that without waste, after so long for each strip. */
function gapAfter(ms: number): number {
  const gaps = HOPPER_C.map((strip) => ({
    id: strip.id,
    gap: costAfter(stripProblem(strip), ms) / strip.areaOverW - 1,
  }));
  return 100 * meanByClass(gaps);
}

/**
 * Strips C1 to C7 (Hopper and Turton, EJOR 128, 2001) in fixed orientation, straight cuts in any number of stages. Ten
 * seconds for each only when asked for.
 */
export function cutC1C7(long: boolean): Figure[] {
  gapAfter(5);
  const figure = (name: string, ms: number, goal: number): Figure => ({
    name: `cut.c1-c7.${name}`,
    value: gapAfter(ms),
    unit: "%",
    goal,
    better: "lower",
  });
  const quick = [figure("50ms", 50, 2.2), figure("1s", 1000, 1.5)];
  return long ? [...quick, figure("10s", 10_000, 1.2)] : quick;
}
