import { plan } from "../src/plan/index.ts";
import { type Figure, median, samplesOf } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

/** Time per shade in a job of 2,000 over that in a job of 20: 1 where the work grows in step. */
export function planGrowth(): Figure {
  const few = jobOf(20);
  const many = jobOf(2000);
  // Both samples plan as many shades, so that the machine is as warm for one as for the other.
  const perFew = median(samplesOf(() => plan(few), { warm: 100, times: 200 })) / 20;
  const perMany = median(samplesOf(() => plan(many), { warm: 1, times: 3 })) / 2000;
  return { name: "plan.growth", value: perMany / perFew, unit: "ratio", goal: 1.2, better: "lower" };
}
