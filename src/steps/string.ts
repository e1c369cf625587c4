import type { Step } from "../shade-plan/index.ts";
import { type Bench, isCleatBench, isLockBench, isTubeBench } from "./bench.ts";
import { cleatStringSteps } from "./string-cleat.ts";
import { lockStringSteps } from "./string-lock.ts";
import { railSteps } from "./string-rail.ts";
import { tubeStringSteps } from "./string-tube.ts";

/** From cut cords to cords that are taken up under the board, and the bar in the hem. */
export function stringSteps(bench: Bench): Step[] {
  return [
    ...(isLockBench(bench) ? lockStringSteps(bench) : []),
    ...(isCleatBench(bench) ? cleatStringSteps(bench) : []),
    ...(isTubeBench(bench) ? tubeStringSteps(bench) : []),
    ...railSteps(bench),
  ];
}
