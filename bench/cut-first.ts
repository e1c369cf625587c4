import { solveCloth } from "../src/cutting/index.ts";
import { clothJob } from "./cloth-jobs.ts";
import { type Figure, median, samplesOf } from "./figure.ts";

/** Plans tried before the first answer is shown. */
const PLANS = 4000;

/** A good plan of 30 pieces with its bound and cuts, checked, the machine warm. */
export function cutFirst(): Figure {
  const jobs = Array.from({ length: 12 }, (_, seed) => clothJob({ seed, pieces: 30, each: 2 }));
  const times = jobs.flatMap((job) => samplesOf(() => solveCloth(job, PLANS), { warm: 1, times: 3 }));
  return { name: "cut.first", value: median(times), unit: "ms", goal: 50, better: "lower" };
}
