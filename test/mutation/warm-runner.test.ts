import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import { collector } from "../../scripts/mutation/collect-tests.mjs";
import { strykerPlugins } from "../../scripts/mutation/warm-runner.mjs";

interface Runner {
  mutantRun(asked: { testFilter: string[]; activeMutant: { id: string } }): Promise<{ status: string }>;
}

/** A process that was begun anew: no first run was made in it. */
function runnerWith(wish: object): Runner {
  vi.stubEnv("MUTATION", JSON.stringify(wish));
  const [{ injectableClass: WarmRunner }] = strykerPlugins as unknown as [
    { injectableClass: new () => Runner },
  ];
  return new WarmRunner();
}

afterEach(() => void vi.unstubAllEnvs());

const run = (runner: Runner, id: string) =>
  runner.mutantRun({ testFilter: ["a.test.ts > a #0"], activeMutant: { id } });

test("a process that knows no test does not call a mutant one that survived", async () => {
  expect(await run(runnerWith({ tests: [] }), "7")).toMatchObject({ status: "error" });
});

test("a process begun anew tries the tests of the first run, and only what was drawn", async () => {
  const memory = join(mkdtempSync(join(tmpdir(), "memory-")), "tests.json");
  const known = [["a.test.ts > a #0", { file: "a.test.ts", tookMs: 1, kills: 0 }]];
  writeFileSync(memory, JSON.stringify({ known, sample: ["7"] }));
  const runner = runnerWith({ tests: ["a.test.ts"], memory });
  // Nothing was compiled here: that the test was looked for is what shows.
  expect(await run(runner, "7")).toMatchObject({
    status: "error",
    errorMessage: "none of its tests was run",
  });
  expect(await run(runner, "8")).toMatchObject({ status: "error", errorMessage: "not drawn" });
});

test("tests that replace something while they run are collected with what replaces it", () => {
  expect(collector().stand.vi).toBe(vi);
});
