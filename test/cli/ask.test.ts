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

test("a question in one’s own words is answered with figures of the typed numbers and a reason", async () => {
  const { code, out } = await typed(["ask", "about", "how", "many", "cords?", "--width", "60"]);
  expect(code).toBe(0);
  // ceil((60 − 2·2) / 10) + 1 columns; (60 − 4) / 6 in apart.
  expect(out.replaceAll("\u00a0", " ").replaceAll("⁄", "/")).toMatch(
    /How many cords do I need\?\n {2}One for each column of rings: 7, 9 3\/8 in apart/,
  );
  expect(out).toMatch(/\n {2}Why: /);
  expect(out).toMatch(/\n {2}Source: /);
});

test("without words all questions are listed, and with a job its own shade is asked", async () => {
  const all = await typed(["ask", "about"]);
  expect(all.out).toMatch(/Can the lock serve as the last eye\?\n/);
  const own = await typed(["ask", "about", "how heavy", "--job", DEMO, "--shade", "parlour-left", "--json"]);
  const { format, answers } = JSON.parse(own.out);
  expect([format, answers[0].id]).toEqual(["shadewright-answers", "how-heavy"]);
  expect(answers[0].figures.at(-1).working.id).toBe("lift.held");
});

test.each([
  [["about", "zxqv"], "words"],
  [["about", "how much cloth", "--width", "wide"], "--width"],
  [["about", "how much cloth", "--width", "1 mm"], "--width"],
  [["about", "how much cloth", "--gsm", "heavy"], "--gsm"],
  [["about", "how much cloth", "--job", DEMO, "--width", "30"], "--width"],
])("ask %j is refused, naming the field", async (words, wanted) => {
  const { code, out, err } = await typed(["ask", ...words]);
  expect([code, out]).toEqual([2, ""]);
  expect(err).toContain(wanted);
});

test("a symptom is asked without a job", async () => {
  const { code, out } = await typed(["ask", "why", "will-not-stay", "--cord", "1.4"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^It creeps up or down by itself\n1\. /);
});
