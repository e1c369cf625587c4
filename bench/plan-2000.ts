import { plan } from "../src/plan/index.ts";
import { type Figure, leastOfRounds } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

/** A job of 2,000 shades planned whole. */
export function plan2000(): Figure {
  const job = jobOf(2000);
  const value = leastOfRounds(() => plan(job), { warm: 1, rounds: 5, calls: 1 }) / 1000;
  return { name: "plan.2000", value, unit: "s", goal: 1.2, better: "lower" };
}
