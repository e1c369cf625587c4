import { expect, test } from "vitest";
import { isProved } from "./is-proved.ts";

test.each([
  // A millionth of what the plan costs, and in any case a billionth.
  [1_000_000, 1_000_000, true],
  [1_000_000, 1_000_001, true],
  [1_000_000, 999_999.1, true],
  [1_000_000, 999_998.9, false],
  [0, 0, true],
  [0, -1e-9, true],
  [0, -1.1e-9, false],
  [1, 0, false],
])("a plan that costs %d is the best where none costs less than %d: %s", (cost, bound, proved) => {
  expect(isProved(cost, bound)).toBe(proved);
});
