import { appendFileSync } from "node:fs";
import fc from "fast-check";
import { expect } from "vitest";

/**
 * Properties draw the same cases for everyone, so that a run judges the change and not its luck. `SEED=…` draws
 * others; `npm run explore` tries many seeds, and what it finds is pinned beside the property (`pinned.ts`).
 */
const USUAL_SEED = 20261125;

const finds = process.env.EXPLORE_FINDS;
fc.configureGlobal({
  seed: Number(process.env.SEED ?? USUAL_SEED),
  ...(finds === undefined ? {} : { reporter: (details) => writeFind(finds, details) }),
});

/** One line for each property that failed: where it stands, and the smallest case. */
function writeFind(path: string, details: fc.RunDetails<unknown>): void {
  if (!details.failed) return;
  const { testPath, currentTestName } = expect.getState();
  const { seed, counterexample } = details;
  appendFileSync(path, `${JSON.stringify({ testPath, test: currentTestName, seed, counterexample })}\n`);
  throw new Error(fc.defaultReportMessage(details));
}
