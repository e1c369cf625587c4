import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { main } from "../../src/cli/main.ts";
import { verifyCloth, verifyLengths } from "../../src/cutting/index.ts";
import { jobText, newJob, newWindow } from "../../src/job/index.ts";
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
    expect(err).toMatch(/Plain cotton.*\d pieces, .* of new cloth; /);
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
