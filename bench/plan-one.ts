import { plan } from "../src/plan/index.ts";
import { type Figure, leastOfRounds } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

/** One shade planned, the machine warm: what stands between a keystroke and its drawing. */
export function planOne(): Figure {
  const job = jobOf(1);
  const value = leastOfRounds(() => plan(job), { warm: 300, rounds: 20, calls: 25 });
  return { name: "plan.one", value, unit: "ms", goal: 0.6, better: "lower" };
}
