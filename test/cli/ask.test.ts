import { expect, test } from "vitest";
import { typed } from "./typed.ts";

const DEMO = "examples/lantern-row.json";

test("eight cords of 1.4 mm: the lock that takes them, and why the other does not", async () => {
  const { code, out } = await typed(["ask", "lock", "--cords", "8", "--diameter", "1.4"]);
  expect(code).toBe(0);
  expect(out).toMatch(
    /^Six-slot lock: takes them\.\nFour-slot lock: does not\. The lock takes at most 7 cords;/,
  );
});

test.each([
  [["lock", "--cords", "none", "--diameter", "1.4"], "--cords"],
  [["lock", "--cords", "8", "--diameter", "12 in"], "--diameter"],
  [["why", "lock-jams", DEMO, "--shade", "parlor-left"], "parlour-left"],
  [["why", "it-fell", DEMO], "hem-not-level"],
])("ask %j is refused, naming what is wanted", async (words, wanted) => {
  const { code, out, err } = await typed(["ask", ...words]);
  expect([code, out]).toEqual([2, ""]);
  expect(err).toContain(wanted);
});

test("the hardware of a shade of the demonstration, in words and as JSON", async () => {
  const words = await typed(["ask", "hardware", DEMO, "--shade", "parlour-left"]);
  expect(words.code).toBe(0);
  expect(words.out).toMatch(/sets of parts, \d+ of which go together/);
  expect(words.out).toMatch(/cord rules \d+ failed and \d+ not proven/);
  const { out } = await typed(["ask", "hardware", DEMO, "--json"]);
  const answer = JSON.parse(out);
  expect(answer.format).toBe("shadewright-hardware");
  expect(answer.choices.length).toBeGreaterThan(3);
});

test("the causes of a symptom, in words and as JSON", async () => {
  const words = await typed(["ask", "why", "hard-to-raise", DEMO]);
  expect(words.code).toBe(0);
  expect(words.out).toMatch(/^It is hard to raise\n1\. /);
  const { out } = await typed(["ask", "why", "hard-to-raise", DEMO, "--json"]);
  expect(JSON.parse(out).causes[0].test).toMatch(/\.$/);
});
