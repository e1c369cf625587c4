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

async function setsIn(out: string, name = "workbook.pdf"): Promise<string[]> {
  const pages = await readPages(await openPdf(new Uint8Array(readFileSync(join(out, name)))));
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

describe("--files", () => {
  /** Three windows in two rooms. */
  function roomsOf() {
    const made = jobOf(3);
    const job = JSON.parse(readFileSync(made.file, "utf8"));
    const [room] = job.rooms;
    job.rooms = [
      { ...room, id: "hall", name: "Hall", windows: room.windows.slice(0, 2) },
      { ...room, id: "loft", name: "Loft", windows: room.windows.slice(2) },
    ];
    writeFileSync(made.file, JSON.stringify(job));
    return made;
  }

  test.each([
    ["room", ["hall.pdf", "loft.pdf"], [2, 1]],
    ["shade", ["w1.pdf", "w2.pdf", "w3.pdf"], [1, 1, 1]],
  ] as const)("by %s they are bound, and the job in front", async (by, names, shades) => {
    const { file, out } = roomsOf();
    expect(
      (await typed(["plan", file, "--out", out, "--files", by, "--print", "tag,table,shopping"])).code,
    ).toBe(0);
    expect(readdirSync(join(out, "workbooks")).sort()).toEqual(names);
    expect(await setsIn(out)).toEqual(["The job", "Shopping"]);
    for (const [i, name] of names.entries()) {
      expect(await setsIn(out, `workbooks/${name}`)).toEqual(["Table sheets", "Child-safety tag"]);
      const pdf = await openPdf(new Uint8Array(readFileSync(join(out, "workbooks", name))));
      const outline = (await pdf.getOutline()).map(({ title }) => title);
      expect(outline.filter((title) => title.startsWith("Window "))).toHaveLength(shades[i] ?? 0);
    }
  });

  test("one is the whole job in one", async () => {
    const { file, out } = roomsOf();
    await typed(["plan", file, "--out", out, "--files", "one", "--print", "tag"]);
    expect(existsSync(join(out, "workbooks"))).toBe(false);
    expect(await setsIn(out)).toEqual(["Child-safety tag"]);
  });
});

test("the same finding on many windows is said once, with where", async () => {
  const { file, out } = jobOf(9);
  const { err } = await typed(["plan", file, "--out", out, "--print", "client"]);
  const [one] = err.match(/At 9 windows: w1, w2, w3, w4, w5, w6 and 3 more/) ?? [];
  expect(one).toBeDefined();
  const alone = await typed(["plan", jobOf(1).file, "--out", jobOf(1).out, "--print", "client"]);
  // Nine windows take hardly more lines than one.
  expect(err.split("\n").length).toBeLessThan(2 * alone.err.split("\n").length);
  // And the sum is of what is said, as the planner counts it, not nine times of that.
  const sum = (text: string) => {
    const [, said = ""] = text.match(/^\d+ shades? planned: (.+)\.$/m) ?? [];
    return said.split(", ").map((one) => Number.parseInt(one, 10));
  };
  const ofOne = sum(alone.err);
  expect(ofOne.length).toBeGreaterThan(1);
  sum(err).forEach((count, i) => {
    expect(count).toBeGreaterThanOrEqual(ofOne[i] ?? 0);
    expect(count).toBeLessThan((ofOne[i] ?? 0) + 3);
  });
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
