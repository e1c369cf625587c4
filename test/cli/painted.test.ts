import { expect, test } from "vitest";
import { inColours, paints } from "../../src/cli/painted.ts";

test("only the severity at the margin is painted, and without the paint the text is as it was", () => {
  const text =
    "Room\n  stop      The stop is near.\n            note that it is not painted\n  unproven  Test it.\n";
  const onTerminal = inColours(text);
  expect(onTerminal).toContain("  \u001b[1;31mstop\u001b[0m      The stop is near.");
  expect(onTerminal.split("\u001b[1;")).toHaveLength(3);
  expect(onTerminal.replace(/.\[(?:0|1;\d\d)m/gu, "")).toBe(text);
});

test("NO_COLOR, a dumb terminal and a file have none", () => {
  expect(paints(true, {})).toBe(true);
  expect(paints(true, { NO_COLOR: "1" })).toBe(false);
  expect(paints(true, { NO_COLOR: "" })).toBe(true);
  expect(paints(true, { TERM: "dumb" })).toBe(false);
  expect(paints(false, {})).toBe(false);
});
