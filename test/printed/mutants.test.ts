import { readFileSync } from "node:fs";
import { expect, test } from "vitest";

interface Mutant {
  file: string;
  from: string;
  to: string;
  what: string;
}

const MUTANTS = JSON.parse(readFileSync("test/printed/mutants.json", "utf8")) as Mutant[];

// `npm run mutate:printed` makes each of these changes and runs the tests beside this one.
test.each(MUTANTS)("what is to be printed wrongly is there once: $what", ({ file, from, to }) => {
  expect(readFileSync(file, "utf8").split(from)).toHaveLength(2);
  expect(to).not.toBe(from);
});
