import { type ClothCutPlan, solveCloth } from "../src/cutting/index.ts";
import { clothJob } from "./cloth-jobs.ts";
import { type Figure, timed } from "./figure.ts";

const PLANS = 8000;

/** Ten cloths of 400 pieces each on one thread: time, what is left to the bound, memory. */
export function cut400x10(): Figure[] {
  const plans: ClothCutPlan[] = [];
  const ms = timed(() => {
    for (let seed = 0; seed < 10; seed++) {
      const answer = solveCloth(clothJob({ seed, pieces: 400, each: 5 }), PLANS);
      if (!("cost" in answer)) throw new Error(`invalid answer: ${answer.status}`);
      plans.push(answer);
    }
  });
  const gap = plans.reduce((sum, plan) => sum + plan.gap, 0) / plans.length;
  return [
    { name: "cut.400x10", value: ms / 1000, unit: "s", goal: 10, better: "lower" },
    { name: "cut.400x10.gap", value: 100 * gap, unit: "%", goal: 3, better: "lower" },
    {
      name: "cut.400x10.memory",
      value: process.memoryUsage.rss() / 2 ** 20,
      unit: "MiB",
      goal: 1024,
      better: "lower",
    },
  ];
}
