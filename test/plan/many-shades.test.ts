import { expect, it } from "vitest";
import { jobOf } from "../../bench/many-windows.ts";
import { figuresOf, hasFigure, JobPlanner, plan, proveRemedies } from "../../src/plan/index.ts";

/** More than are kept of a job that is planned once. */
const MANY = 68;

it("reads a job of many shades, whose plans are made again, as one whose plans are all kept", () => {
  const job = jobOf(MANY);
  const again = plan(job);
  const kept = new JobPlanner().plan(job);
  // Of the job's cost every shade is read, so that what was read before them is there no more.
  const grid = again.shades[0]?.grid;
  expect(again.shades[0]?.grid).toBe(grid);
  expect(JSON.stringify(again.cost)).toBe(JSON.stringify(kept.cost));
  expect(again.shades[0]?.grid).not.toBe(grid);
  for (const n of [0, 1, 67]) {
    const [one, other] = [again.shades[n], kept.shades[n]];
    if (one === undefined || other === undefined) throw new Error(`there is no shade ${n}`);
    expect(JSON.stringify(one)).toBe(JSON.stringify(other));
    expect([...figuresOf(one).keys()]).toEqual([...figuresOf(other).keys()]);
    expect(hasFigure(one, "cord-total")).toBe(hasFigure(other, "cord-total"));
  }
  expect(JSON.stringify(again.findings)).toBe(JSON.stringify(kept.findings));
});

it("proves remedies without working out what nobody reads", () => {
  const job = jobOf(1);
  const [shade] = proveRemedies(job, plan(job)).shades;
  expect(Object.getOwnPropertyDescriptor(shade, "steps")?.get).toBeDefined();
  expect(shade?.steps).toEqual(plan(job).shades[0]?.steps);
});
