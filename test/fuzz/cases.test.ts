import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { runCase } from "./run-case.ts";
import { TEXTS } from "./texts.ts";

const CASES = "test/fuzz/cases";

test("what `npm run fuzz` has found goes the whole way from file to files", async () => {
  for (const name of readdirSync(CASES).filter((one) => one.endsWith(".json"))) {
    const { text } = JSON.parse(readFileSync(`${CASES}/${name}`, "utf8")) as { text: string };
    await expect(runCase(text), name).resolves.toBeUndefined();
  }
});

test.each(["valid", "wrong", "hostile"] as const)("a few texts go there at every run: %s", async (kind) => {
  let count = 0;
  // A workbook takes longer than all else.
  const depth = () => ({ drawings: true, remedies: true, workbook: count++ % 10 === 0 });
  const property = fc.asyncProperty(TEXTS[kind], (text) => runCase(text, depth()));
  await fc.assert(property, {
    numRuns: kind === "valid" ? 4 : 25,
    endOnFailure: true,
  });
});
