import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { CASE_KINDS, depthOf, textOf } from "./drawn.ts";
import { runCase } from "./run-case.ts";

const CASES = "test/fuzz/cases";

test("what `npm run fuzz` has found goes the whole way from file to files", async () => {
  for (const name of readdirSync(CASES).filter((one) => one.endsWith(".json"))) {
    const { text } = JSON.parse(readFileSync(`${CASES}/${name}`, "utf8")) as { text: string };
    await expect(runCase(text), name).resolves.toBeTypeOf("boolean");
  }
});

test("a case follows from its kind and its number alone", () => {
  const three = () => CASE_KINDS.map((kind) => textOf({ kind, seed: 5000 }));
  const first = three();
  CASE_KINDS.map((kind) => textOf({ kind, seed: 1 }));
  expect(three()).toEqual(first);
  expect(new Set(first).size).toBe(3);
});

test.each(CASE_KINDS)("a few texts go there at every run: %s", async (kind) => {
  const jobs: boolean[] = [];
  for (let seed = 0; seed < (kind === "valid" ? 60 : 200); seed++)
    jobs.push(await runCase(textOf({ kind, seed }), depthOf({ kind, seed })));
  // Most of those that are to be allowed are; of the others some are as well, and some are not.
  const share = jobs.filter((isJob) => isJob).length / jobs.length;
  if (kind === "valid") expect(share).toBeGreaterThan(0.7);
  else {
    expect(share).toBeGreaterThan(0);
    expect(share).toBeLessThan(0.7);
  }
});
