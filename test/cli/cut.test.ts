import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { verifyCloth, verifyLengths } from "../../src/cutting/index.ts";
import { jobText, newJob, newWindow } from "../../src/job/index.ts";
import type { CuttingPlan } from "../../src/plan/index.ts";
import { emptyFolder, typed } from "./typed.ts";

function jobFile() {
  const folder = emptyFolder();
  const file = join(folder, "job.json");
  const job = newJob({ id: "job", name: "Two windows", system: "metric" });
  const windows = [900, 1250].map((widthMm, n) =>
    newWindow({ id: `w${n}`, name: `Window ${n}`, widthMm, heightMm: 1400 }),
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

  test.each([
    ["--tries", "many"],
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
