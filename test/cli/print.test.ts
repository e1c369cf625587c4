import { spawn } from "node:child_process";
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { jobText, newJob, newWindow } from "../../src/job/index.ts";
import { openPdf, readPages } from "../workbook/read-pdf.ts";
import { emptyFolder, typed } from "./typed.ts";

function jobOf(count: number) {
  const folder = emptyFolder();
  const file = join(folder, "job.json");
  const job = newJob({ id: "job", name: "Ferry House", system: "metric", place: "gb", purpose: "own-home" });
  const windows = Array.from({ length: count }, (_, i) =>
    newWindow({ id: `w${i + 1}`, name: `Window ${i + 1}`, widthMm: 900, heightMm: 1400 }),
  );
  writeFileSync(file, jobText({ ...job, rooms: [{ id: "room", name: "Room", windows }] }));
  return { folder, file, out: join(folder, "out") };
}

async function setsIn(out: string): Promise<string[]> {
  const pages = await readPages(await openPdf(new Uint8Array(readFileSync(join(out, "workbook.pdf")))));
  const feet = pages.map(({ runs, heightPt }) => runs.find(({ y }) => y > heightPt - 50)?.text ?? "");
  return [...new Set(feet)];
}

describe("--print", () => {
  test.each([
    ["client", ["Client sheets"]],
    ["tag,table", ["The job", "Table sheets", "Child-safety tag"]],
    ["helper", ["The job", "Table sheets", "Step by step"]],
    [" Findings , workings ", ["Findings", "Workings"]],
  ])("%s prints that and no more", async (words, sets) => {
    const { file, out } = jobOf(1);
    expect((await typed(["plan", file, "--out", out, "--print", words])).code).toBe(0);
    expect(await setsIn(out)).toEqual(sets);
  });

  test("without it the usual sets are printed", async () => {
    const { file, out } = jobOf(1);
    await typed(["plan", file, "--out", out]);
    expect(await setsIn(out)).toEqual([
      "The job",
      "Table sheets",
      "Step by step",
      "Child-safety tag",
      "Shopping",
    ]);
  });

  test.each([
    ["tabel", "table"],
    ["", "table, steps"],
  ])("%j is refused with what would do", async (word, wanted) => {
    const { file, out } = jobOf(1);
    const { code, err } = await typed(["plan", file, "--out", out, "--print", word]);
    expect([code, err]).toEqual([2, expect.stringContaining("--print")]);
    expect(err.replace(/\s+/g, " ")).toContain(wanted);
    expect(existsSync(out)).toBe(false);
  });
});

test("the same finding on many windows is said once, with where", async () => {
  const { file, out } = jobOf(9);
  const { err } = await typed(["plan", file, "--out", out, "--print", "client"]);
  const [one] = err.match(/At 9 windows, here w1: w1, w2, w3, w4, w5, w6 and 3 more/) ?? [];
  expect(one).toBeDefined();
  const alone = await typed(["plan", jobOf(1).file, "--out", jobOf(1).out, "--print", "client"]);
  // Nine windows take hardly more lines than one.
  expect(err.split("\n").length).toBeLessThan(2 * alone.err.split("\n").length);
});

test("--quiet says nothing of a plan that went well, and still says what is wrong with a job", async () => {
  const { folder, file, out } = jobOf(1);
  expect(await typed(["plan", file, "--out", out, "--quiet"])).toEqual({ code: 0, out: "", err: "" });
  const bad = join(folder, "bad.json");
  writeFileSync(bad, "{}");
  expect((await typed(["plan", bad, "--out", out, "--quiet"])).err).not.toBe("");
});

test.each([
  ["SIGTERM", 143],
  ["SIGINT", 130],
] as const)(
  "%s ends it with %d and leaves nothing half written",
  async (signal, wanted) => {
    const { folder, file, out } = jobOf(60);
    const child = spawn(process.execPath, [resolve("bin/shadewright.mjs"), "plan", file, "--out", out]);
    const ended = new Promise<number | null>((done) => child.on("exit", (code) => done(code)));
    // The first file has been begun: from here on there is something to tidy.
    const begun = () => existsSync(out) && readdirSync(out).some((name) => name.startsWith(".shadewright-"));
    while (!begun()) await new Promise((next) => setTimeout(next, 20));
    child.kill(signal);
    expect(await ended).toBe(wanted);
    expect(readdirSync(out)).toEqual([]);
    expect(readdirSync(folder).sort()).toEqual(["job.json", "out"]);
  },
  120_000,
);
