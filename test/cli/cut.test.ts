import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { main } from "../../src/cli/main.ts";
import { verifyCloth, verifyLengths } from "../../src/cutting/index.ts";
import { jobText, newJob, newWindow, openJobText } from "../../src/job/index.ts";
import type { CuttingPlan } from "../../src/plan/index.ts";
import { emptyFolder, typed } from "./typed.ts";

function jobFile(count = 2) {
  const folder = emptyFolder();
  const file = join(folder, "job.json");
  const job = newJob({ id: "job", name: "Two windows", system: "metric" });
  const windows = Array.from({ length: count }, (_, n) =>
    newWindow({
      id: `w${n}`,
      name: `Window ${n}`,
      widthMm: 900 + ((n * 350) % 977),
      heightMm: 1400 + ((n * 211) % 643),
    }),
  );
  writeFileSync(file, jobText({ ...job, rooms: [{ id: "room", name: "Room", windows }] }));
  return { file, out: join(folder, "out") };
}

describe("shadewright cut", () => {
  test("writes the cutting plan, its lists, and each bolt as SVG and DXF; every plan passes its check", async () => {
    const { file, out } = jobFile();
    const { code, err } = await typed(["cut", file, "--out", out, "--tries", "300"]);
    expect(code).toBe(0);
    expect(err).toMatch(/Plain cotton.*\d pieces, .* of new cloth\. /);
    expect(readdirSync(out).sort()).toEqual(["cutting", "cutting.json"]);
    const files = readdirSync(join(out, "cutting"));
    expect(files).toContain("cutting-order.csv");
    expect(files).toContain("plain-cotton-new.svg");
    expect(files).toContain("plain-cotton-new.dxf");
    const cutting: CuttingPlan = JSON.parse(readFileSync(join(out, "cutting.json"), "utf8"));
    for (const { problem, answer } of cutting.cloths) {
      if ("bolts" in answer) expect(verifyCloth(problem, answer)).toEqual([]);
    }
    for (const { problem, answer } of cutting.lengths) expect(verifyLengths(problem, answer)).toEqual([]);
  });

  test("--json prints the same plan for the same seed and tries", async () => {
    const { file } = jobFile();
    const [one, two] = [
      await typed(["cut", file, "--json", "--tries", "100", "--seed", "7"]),
      await typed(["cut", file, "--json", "--tries", "100", "--seed", "7"]),
    ];
    expect(JSON.parse(one.out)).toMatchObject({ format: "shadewright-cutting", version: 1, jobId: "job" });
    expect(one.out).toBe(two.out);
  });

  test("stops when it is asked to, with the best plan so far, and says on the screen how far it is", async () => {
    const { file, out } = jobFile(30);
    const told: string[] = [];
    let listeners = 0;
    const code = await main(["cut", file, "--out", out, "--seconds", "3600"], {
      stdin: (async function* () {})(),
      out: () => undefined,
      err: () => undefined,
      outPart: async () => undefined,
      columns: 100,
      progress: (text) => told.push(text),
      onInterrupt: (stop) => {
        listeners++;
        const timer = setTimeout(stop, 1500);
        return () => {
          clearTimeout(timer);
          listeners--;
        };
      },
    });
    expect(code).toBe(0);
    expect(listeners).toBe(0);
    expect(told.at(-1)).toBe("");
    expect(told.some((text) => /^\d+ plans tried/.test(text))).toBe(true);
    const cutting: CuttingPlan = JSON.parse(readFileSync(join(out, "cutting.json"), "utf8"));
    const statuses = cutting.cloths.map(({ answer }) => answer.status);
    expect(statuses).toContain("stopped");
    for (const { problem, answer } of cutting.cloths) {
      if ("bolts" in answer) expect(verifyCloth(problem, answer)).toEqual([]);
    }
  });

  test("ends when its time is up", async () => {
    const { file } = jobFile(30);
    const { code, out } = await typed(["cut", file, "--json", "--seconds", "0"]);
    expect(code).toBe(0);
    const { cloths }: CuttingPlan = JSON.parse(out);
    expect(cloths.every(({ answer }) => "bolts" in answer)).toBe(true);
  });

  test("plans the rest anew once some cuts are made and the bolt was short", async () => {
    const { file, out } = jobFile(4);
    await typed(["cut", file, "--out", out, "--tries", "300"]);
    const followed = join(out, "cutting.json");
    const before: CuttingPlan = JSON.parse(readFileSync(followed, "utf8"));
    const cloth = before.cloths.find(({ clothId }) => clothId === "plain-cotton");
    if (cloth === undefined || !("bolts" in cloth.answer)) throw new Error("no plan");
    const words = ["--followed", followed, "--cloth", "plain-cotton", "--made", "2", "--tries", "300"];
    const go = (name: string, more: string[]) =>
      typed(["cut", file, ...words, "--out", join(out, name), ...more]);
    const newOf = (name: string) => {
      const { cloths }: CuttingPlan = JSON.parse(readFileSync(join(out, name, "cutting.json"), "utf8"));
      const one = cloths.find(({ clothId }) => clothId === "plain-cotton");
      if (one === undefined || !("bolts" in one.answer)) throw new Error("no plan");
      return one.answer.bolts.find(({ boltId }) => boltId === one.newBoltId)?.usedMm ?? 0;
    };
    const leftOf = (name: string) => {
      const opened = openJobText(readFileSync(join(out, name, "cut-job.json"), "utf8"));
      if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
      expect(opened.job.cutCloth?.[0]?.pieces.every(({ lot }) => lot !== undefined)).toBe(true);
      return opened.job.stock.cloth?.find(({ name: of }) => of?.endsWith("left on the bolt"))?.lengthMm ?? 0;
    };
    const as = await go("as-planned", []);
    expect([as.code, as.err]).toEqual([
      0,
      expect.stringContaining("cut-job.json is the job with these cuts made"),
    ]);
    expect(newOf("as-planned")).toBe(0);
    await go("short", ["--short", "40"]);
    expect(leftOf("as-planned") - leftOf("short")).toBeCloseTo(40, 1);
    await go("measured", ["--left", "3 cm"]);
    expect(leftOf("measured")).toBeCloseTo(30, 1);
    expect(newOf("measured")).toBeGreaterThan(0);
    // The job with the cuts made is cut on with no more options, and the plan from before them is refused.
    const cutJob = join(out, "short", "cut-job.json");
    expect((await typed(["cut", cutJob, "--json", "--tries", "50"])).code).toBe(0);
    const old = await typed(["cut", cutJob, ...words, "--out", join(out, "again")]);
    expect([old.code, old.err]).toEqual([2, expect.stringContaining("of this bolt other cuts are made")]);
  });

  test.each([
    [["--made", "2"], "--followed"],
    [["--followed", "PLAN"], "--made"],
    [["--followed", "PLAN", "--made", "2"], "one of: plain-cotton, "],
    [["--followed", "PLAN", "--made", "2", "--cloth", "silk"], "one of: plain-cotton, "],
    [["--followed", "PLAN", "--made", "2", "--cloth", "plain-cotton", "--bolt", "x"], "one of: new"],
    [["--followed", "PLAN", "--made", "99", "--cloth", "plain-cotton"], "a cut of its ticket"],
    [["--followed", "PLAN", "--made", "2", "--cloth", "plain-cotton", "--left", "much"], "--left"],
    [["--followed", "PLAN", "--made", "2", "--cloth", "plain-cotton", "--short", "900 m"], "--short"],
    [["--followed", "JOB", "--made", "2"], "format"],
  ])("cuts made: %j is refused", async (words, said) => {
    const { file, out } = jobFile();
    await typed(["cut", file, "--out", out, "--tries", "50"]);
    const typedWords = words.map((word) =>
      word === "PLAN" ? join(out, "cutting.json") : word === "JOB" ? file : word,
    );
    const { code, err } = await typed(["cut", file, "--out", join(out, "next"), ...typedWords]);
    expect([code, err.replace(/\s+/g, " ")]).toEqual([2, expect.stringContaining(said)]);
    expect(existsSync(join(out, "next"))).toBe(false);
  });

  test.each([
    ["--tries", "many"],
    ["--seconds", "soon"],
    ["--tries", "-1"],
    ["--seed", "1.5"],
  ])("%s %s is refused", async (option, value) => {
    const { file, out } = jobFile();
    const { code, err } = await typed(["cut", file, "--out", out, option, value]);
    expect(code).toBe(2);
    expect(err).toMatch(/whole number/);
    expect(existsSync(out)).toBe(false);
  });
});
