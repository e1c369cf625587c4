import type { CourseHeight } from "../../shade-plan/index.ts";

/**
 * Pull and hold of cords over eyes, by the weight on all of them. Going up, friction multiplies the load of a cord;
 * holding, it divides it by as much.
 *
 * @param heldN weight at which each cord has its load and its pull
 * @param pullN pull of the hand then
 */
export function overEyes(
  cords: readonly { loadN: number; pullN: number }[],
  heldN: number,
  pullN: number,
): (nowN: number) => Pick<CourseHeight, "pullN" | "holdN"> {
  const loads = cords.reduce((sum, { loadN }) => sum + loadN, 0);
  const holds = cords.reduce((sum, cord) => sum + (cord.pullN > 0 ? cord.loadN ** 2 / cord.pullN : 0), 0);
  return (nowN) => ({
    pullN: heldN > 0 ? (nowN * pullN) / heldN : 0,
    holdN: loads > 0 ? (nowN * holds) / loads : 0,
  });
}
