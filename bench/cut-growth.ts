import { solveCloth } from "../src/cutting/index.ts";
import { clothJob } from "./cloth-jobs.ts";
import { type Figure, median, samplesOf } from "./figure.ts";

const COUNTS = [25, 100, 400, 1600];

/** Power of the number of pieces with which the time of the first checked plan grows, from 25 to 1,600 of them. */
export function cutGrowth(): Figure {
  const points = COUNTS.map((pieces) => {
    const times = [1, 2, 3].flatMap((seed) => {
      const job = clothJob({ seed, pieces, each: 5 });
      return samplesOf(() => solveCloth(job, 0), { warm: 1, times: 3 });
    });
    return { x: Math.log(pieces), y: Math.log(median(times)) };
  });
  const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [x, y] = [mean(points.map((point) => point.x)), mean(points.map((point) => point.y))];
  const slope =
    points.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0) /
    points.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
  return { name: "cut.growth", value: slope, unit: "power", goal: 1.5, better: "lower" };
}
