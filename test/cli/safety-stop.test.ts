import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { jobText, type Place, type Purpose } from "../../src/job/index.ts";
import { jobWith } from "../job-with.ts";
import { verdictIn } from "../words.ts";
import { emptyFolder, launched, typed } from "./typed.ts";

function corded(place: Place, purpose: Purpose): string {
  return jobText(
    jobWith(
      {
        id: "east",
        name: "East",
        opening: { widthsMm: [900], heightsMm: [1500], sillAboveFloorMm: 800, recessDepthMm: 120 },
        shade: { mount: "inside", making: { lift: { kind: "cord-lock" } } },
      },
      { place, purpose, units: { system: "metric", ruler: "1 mm" } },
    ),
  );
}

function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name));
}

function jobFolder(text: string) {
  const folder = emptyFolder();
  const file = join(folder, "job.json");
  writeFileSync(file, text);
  return { file, out: join(folder, "out") };
}

/**
 * SOR/2019-97 ss. 5 to 8 (read in the legal text) bind whoever sells or gives: cords over a lock hang longer than 22 cm.
 * Corded Internal Window Coverings Safety Standard 2014 s. 6(1)(a) does so in Australia.
 * In the United States ANSI/WCMA A100.1-2022 takes no free-hanging cords, in the European Union, Ireland and the United
 * Kingdom EN 13120 has them end 1.5 m above the floor (both as secondary texts report them): the law of each points to its
 * standard. New Zealand had advice alone when it was read.
 */
const ENDINGS: [place: Place, purpose: Purpose, code: number][] = [
  ["ca", "for-sale", 3],
  ["ca", "gift", 3],
  ["ca", "public-building", 3],
  ["ca", "own-home", 0],
  ["au", "for-sale", 3],
  ["gb", "for-sale", 3],
  ["eu", "gift", 3],
  ["ie", "public-building", 3],
  ["us", "for-sale", 3],
  ["us", "own-home", 0],
  ["nz", "for-sale", 0],
  ["gb", "own-home", 0],
];

describe("a shade that a rule on cords stops", () => {
  test.each(ENDINGS)("check: cords over a lock in %s, %s: ends with %i", async (place, purpose, code) => {
    const ending = await typed(["check", "-"], corded(place, purpose));
    expect([ending.code, ending.err.includes("exit code 3")]).toEqual([code, code === 3]);
    expect(await typed(["check", "-", "--allow-findings"], corded(place, purpose))).toMatchObject({
      code: 0,
    });
  });

  test("plan: every file is written all the same, and the reason is said in words", async () => {
    const { file, out } = jobFolder(corded("ca", "for-sale"));
    const { code, err } = await typed(["plan", file, "--out", out]);
    expect(code).toBe(3);
    expect(readdirSync(out).sort()).toEqual([
      "cutting",
      "cutting.json",
      "drawings",
      "lists",
      "plan.json",
      "workbook.pdf",
    ]);
    const said = err.replace(/\s+/g, " ");
    expect(said).toContain("Stopped by the child-safety review, with exit code 3: 1 shade.");
    expect(said).toContain("Room · East (east): ");
    expect(said).toMatch(/its cords fail \d+ rules of Canada\./);
    expect(said).toContain("every sheet, drawing and list says so");
    expect(said).toContain("--allow-findings");
    for (const name of filesIn(out).filter((path) => /\.(?:svg|dxf|csv)$/.test(path))) {
      const text = readFileSync(name, "utf8").replace(/<\/text>\s*<text[^>]*>/g, " ");
      expect(text, name).toContain("Do not sell");
    }
  });

  test("cut follows: the same ending, the same stamp on all that it writes", async () => {
    const { file, out } = jobFolder(corded("ca", "for-sale"));
    const cut = ["cut", file, "--out", out, "--tries", "10"];
    expect((await typed(cut)).code).toBe(3);
    const names = filesIn(out).filter((path) => /\.(?:svg|dxf|csv)$/.test(path));
    expect(names.length).toBeGreaterThan(2);
    for (const name of names) expect(readFileSync(name, "utf8"), name).toContain("Do not sell");
    expect((await typed([...cut, "--allow-findings"])).code).toBe(0);
  });

  test("a shade that nothing stops is written without a stamp", async () => {
    const { file, out } = jobFolder(corded("ca", "own-home"));
    expect((await typed(["plan", file, "--out", out])).code).toBe(0);
    for (const name of filesIn(out).filter((path) => /\.(?:svg|dxf|csv)$/.test(path)))
      expect(readFileSync(name, "utf8"), name).not.toContain("Do not sell");
  });

  test("plan --allow-findings writes the same and ends with 0", async () => {
    const { file, out } = jobFolder(corded("ca", "for-sale"));
    const { code, err } = await typed(["plan", file, "--out", out, "--allow-findings"]);
    expect([code, err.includes("exit code 3")]).toEqual([0, false]);
    const { shades } = JSON.parse(readFileSync(join(out, "plan.json"), "utf8"));
    expect(shades[0].safety.stamp).toBe(true);
  });

  test("--json carries it, of check and of plan", async () => {
    const check = await typed(["check", "-", "--json"], corded("ca", "for-sale"));
    expect(check.code).toBe(3);
    const { safety } = JSON.parse(check.out);
    expect(safety.stopped).toBe(true);
    expect(safety.shades[0]).toMatchObject({ shadeId: "east", stamp: true });
    expect(safety.shades[0].stampText).toMatch(/its cords fail \d+ rules of Canada\.$/);
    expect(safety.shades[0].counts.failed).toBeGreaterThan(0);
    const made = await typed(["plan", "-", "--json"], corded("ca", "for-sale"));
    expect(made.code).toBe(3);
    expect(JSON.parse(made.out).shades[0].safety).toMatchObject({ stamp: true });
    // Nothing was written, so nothing is said of files.
    expect(made.err).not.toContain("files are written");

    const own = JSON.parse((await typed(["check", "-", "--json"], corded("gb", "own-home"))).out).safety;
    expect(own.stopped).toBe(false);
    expect(own.shades[0]).not.toHaveProperty("stampText");
  });

  test("a spring without cords in reach at the front is not stopped for them", async () => {
    const job = JSON.parse(corded("ca", "for-sale"));
    job.rooms[0].windows[0].shade.making.lift = { kind: "spring", rearCords: "enclosed" };
    const { code, out } = await typed(["check", "-", "--json"], JSON.stringify(job));
    expect([code, JSON.parse(out).safety.shades[0].counts.failed]).toEqual([0, 0]);
  });

  test("passes no verdict", async () => {
    const { err } = await typed(["check", "-"], corded("ca", "for-sale"));
    const [, said = ""] = err.split("Stopped by");
    // The review's own name is not a verdict.
    expect(verdictIn(said.replace("child-safety", ""))).toBeUndefined();
  });

  test("a job of many says how many more there are", async () => {
    const job = JSON.parse(corded("ca", "for-sale"));
    const [window] = job.rooms[0].windows;
    job.rooms[0].windows = Array.from({ length: 23 }, (_, i) => ({ ...window, id: `w-${i}` }));
    const { code, err } = await typed(["check", "-"], JSON.stringify(job));
    expect(code).toBe(3);
    expect(err).toContain("with exit code 3: 23 shades.");
    expect(err).toContain("and 3 more");
  });

  test("the command itself ends so", async () => {
    expect((await launched(["check", "-"], corded("ca", "for-sale"))).code).toBe(3);
    expect((await launched(["check", "-", "--allow-findings"], corded("ca", "for-sale"))).code).toBe(0);
  });

  test("help and README tell of it", async () => {
    const { out } = await typed(["--help"]);
    expect(out).toMatch(/and 3 when a rule\s+on cords failed/);
    for (const command of ["plan", "check"]) {
      expect((await typed([command, "--help"])).out).toContain("--allow-findings");
    }
    expect(readFileSync("README.md", "utf8")).toMatch(/Exit codes: 0 planned[\s\S]*3 planned and\s+written/);
  });
});
