import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Command } from "commander";
import { describe, expect, test } from "vitest";
import { program } from "../../src/cli/program.ts";
import { emptyFolder, typed } from "./typed.ts";

const DEMO = "examples/weir-cottage.json";

/** Every command that answers machines, with what makes it answer. */
const ASKED: Record<string, readonly string[]> = {
  plan: [DEMO],
  cut: [DEMO, "--seconds", "0"],
  check: [DEMO],
  "ask about": ["how", "much", "cloth"],
  "ask lock": ["--cords", "8", "--diameter", "1.4"],
  "ask fit": [DEMO],
  "ask hardware": [DEMO],
  "ask why": ["hard-to-raise", DEMO],
  "new": ["--width", "36", "--length", "60"],
  schema: ["plan"],
  "bench-test gap": [],
  "bench-test friction": [],
  "bench-test hold": [],
  "bench-test stretch": [],
  "bench-test turns": ["--turns", "20", "--width", "28.4"],
};

function withJson(command: Command, path: readonly string[] = []): string[] {
  const own = command.options.some(({ long }) => long === "--json") ? [path.join(" ")] : [];
  return [...own, ...command.commands.flatMap((one) => withJson(one, [...path, one.name()]))];
}

const silent = {
  stdin: (async function* () {})(),
  out() {},
  async outPart() {},
  err() {},
  columns: 100,
};
const ALL = withJson(program(silent));

test("every command that has --json is tried here", () => {
  expect(Object.keys(ASKED).sort()).toEqual([...ALL].sort());
});

describe.each(ALL)("%s --json prints one JSON document and nothing else", (name) => {
  const words = name.split(" ");

  test("when it answers", async () => {
    const { code, out } = await typed([...words, ...(ASKED[name] ?? []), "--json"]);
    expect([0, 3]).toContain(code);
    expect(typeof JSON.parse(out)).toBe("object");
  });

  test("when an option is wrong", async () => {
    const { code, out } = await typed([...words, ...(ASKED[name] ?? []), "--json", "--no-such"]);
    expect(code).toBe(2);
    expect(JSON.parse(out).format).toBe("shadewright-issues");
  });
});

describe.each(ALL.filter((name) => ASKED[name]?.includes(DEMO)))(
  "%s --json answers so of every job",
  (name) => {
    const words = name.split(" ");

    test("when it cannot be read, or has a stop", async () => {
      const asked = (path: string) => (ASKED[name] ?? []).map((word) => (word === DEMO ? path : word));
      const missing = await typed([...words, ...asked("no-such.json"), "--json"]);
      expect(missing.code).toBe(2);
      expect(JSON.parse(missing.out).format).toBe("shadewright-issues");
      // Sold, with a lock and free cords: stopped, with findings and a stamp on the standard error.
      const stopped = join(emptyFolder(), "job.json");
      const demo = JSON.parse(readFileSync(DEMO, "utf8"));
      writeFileSync(stopped, JSON.stringify({ ...demo, place: "us", purpose: "for-sale" }));
      const { code, out } = await typed([...words, ...asked(stopped), "--json"]);
      expect([0, 3]).toContain(code);
      expect(typeof JSON.parse(out)).toBe("object");
    });
  },
);

test("a fault of our own is told as JSON too, unless an answer has begun", async () => {
  const broken = {
    [Symbol.asyncIterator]: () => ({
      next: () => Promise.reject(new Error("the machine is on fire")),
    }),
  };
  const { code, out } = await typed(["check", "-", "--json"], broken);
  expect([1, 2]).toContain(code);
  expect(JSON.parse(out).format).toBe("shadewright-issues");
});

test("--help is for people, whatever else is typed", async () => {
  const { code, out } = await typed(["plan", "--help", "--json"]);
  expect([code, out]).toEqual([0, expect.stringContaining("Usage: shadewright plan")]);
});
