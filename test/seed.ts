import fc from "fast-check";

/**
 * Properties draw new cases at every run on a developer's machine, where a failure is looked into and pinned.
 * CI draws the same ones each time, so that it judges the change and not its luck. SEED=… repeats any run.
 */
const seed = process.env.SEED ?? (process.env.CI ? "20261125" : undefined);
if (seed !== undefined) fc.configureGlobal({ seed: Number(seed) });
