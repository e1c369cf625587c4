import type { Step } from "../shade-plan/index.ts";
import { type Bench, isLockBench, isTubeBench } from "./bench.ts";
import { lockStringSteps } from "./string-lock.ts";
import { railSteps } from "./string-rail.ts";
import { tubeStringSteps } from "./string-tube.ts";

/** From cut cords to cords that are taken up under the board, and the bar in the hem. */
export function stringSteps(bench: Bench): Step[] {
  const usual = isLockBench(bench)
    ? lockStringSteps(bench)
    : isTubeBench(bench)
      ? tubeStringSteps(bench)
      : [];
  return [...usual, ...railSteps(bench)];
}
