import { setPatch } from "../src/figures/index.ts";
import { DEFAULTS, type Job, jobSchema, type MakingGroup } from "../src/job/index.ts";
import { JobPlanner, patched } from "../src/plan/index.ts";
import { type Figure, least, median, timed } from "./figure.ts";
import { jobOf } from "./many-windows.ts";

const SHADES = 2000;

/** One setting of the first shade, its usual value, and a little more. */
interface Setting {
  pointer: string;
  value: number;
}

/** Every setting that holds a number, has a usual value and takes a little more. */
function settingsOf(): Setting[] {
  return (Object.keys(DEFAULTS) as MakingGroup[]).flatMap((group) =>
    Object.entries(DEFAULTS[group]).flatMap(([name, entry]): Setting[] => {
      const { value } = entry as { value?: unknown };
      if (typeof value !== "number") return [];
      const setting = { pointer: `/rooms/0/windows/0/shade/making/${group}/${name}`, value };
      return jobSchema.safeParse(having(jobOf(1), setting, 1)).success ? [setting] : [];
    }),
  );
}

/** The job with the setting at its usual value, or a little more: what another keystroke in its field changes. */
function having(job: Job, { pointer, value }: Setting, more: 0 | 1): Job {
  return patched(job, setPatch(job, pointer, value + more));
}

/** The quickest change of each setting, the planner at home in the job. */
function timesOf(job: Job, rounds: number, work: (planner: JobPlanner, job: Job) => unknown): number[] {
  const planner = new JobPlanner();
  planner.plan(job);
  return settingsOf().map((setting) => {
    const before = having(job, setting, 0);
    const after = having(job, setting, 1);
    work(planner, after);
    return least(
      Array.from({ length: rounds }, () => {
        work(planner, before);
        return timed(() => work(planner, after));
      }),
    );
  });
}

/** One setting of one shade changed: the shade planned for its screen, the planner warm; the median over settings. */
export function planEdit(): Figure {
  const times = timesOf(jobOf(1), 15, (planner, job) => planner.shade(job, 0, 0));
  return { name: "plan.edit", value: median(times), unit: "ms", goal: 0.15, better: "lower" };
}

/** The same in a contract of 2,000, the shade and the sum of the job. */
export function planEdit2000(): Figure {
  const times = timesOf(jobOf(SHADES), 5, (planner, job) => planner.plan(job).cost.total);
  return { name: "plan.edit.2000", value: median(times), unit: "ms", goal: 3, better: "lower" };
}
