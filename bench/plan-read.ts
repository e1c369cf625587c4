import { plan } from "../src/plan/index.ts";
import { type Figure, leastOfRounds } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

/** The same, and read what is made when it is read: findings, cost, the review of cords. */
export function planRead(): Figure {
  const job = jobOf(1);
  const read = () => {
    for (const { findings, cost, safety } of plan(job).shades)
      if (!(findings.length > 0 && cost.total > 0 && safety.results.length > 0))
        throw new Error("invalid plan");
  };
  const value = leastOfRounds(read, { warm: 300, rounds: 20, calls: 25 });
  return { name: "plan.read", value, unit: "ms", goal: 1.2, better: "lower" };
}
