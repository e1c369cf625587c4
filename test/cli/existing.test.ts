import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { openJobText } from "../../src/job/index.ts";
import { emptyFolder, typed } from "./typed.ts";

const DEMO = "examples/weir-cottage.json";
const HUNG = [
  ...["new", "--width", "36", "--length", "60", "--existing", "fit-lock", "restring"],
  ...["--strung", "cleat", "--rows", "3 1/2; 11; 18 1/2", "--columns", "2; 18; 34"],
];

describe("a shade that hangs already", () => {
  test("is begun with its rows and columns, and measures itself", async () => {
    const { code, out } = await typed(HUNG);
    expect(code).toBe(0);
    const opened = openJobText(out);
    if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
    expect(opened.job.rooms[0]?.windows[0]?.shade).toMatchObject({
      mount: "to-size",
      existing: { tasks: ["fit-lock", "restring"], strung: "cleat" },
    });
    const { rowsFromHemMm, columnsFromLeftMm } = opened.job.rooms[0]?.windows[0]?.shade.existing ?? {};
    expect(rowsFromHemMm?.map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([88.9, 279.4, 469.9]);
    expect(columnsFromLeftMm?.map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([50.8, 457.2, 863.6]);
    const slanting = openJobText((await typed([...HUNG, "--rows-right", "4; 11 1/2; 19"])).out);
    if (!slanting.ok) throw new Error(JSON.stringify(slanting.issues));
    const { rowsFromHemRightMm } = slanting.job.rooms[0]?.windows[0]?.shade.existing ?? {};
    expect(rowsFromHemRightMm?.map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([101.6, 292.1, 482.6]);
  });

  test("what cannot be read or is left out is told by its option", async () => {
    const without = (option: string) => HUNG.filter((_, i) => HUNG[i] !== option && HUNG[i - 1] !== option);
    expect((await typed(without("--rows"))).err).toMatch(/--rows[\s\S]*lengths with ; between/);
    const wrong = await typed(HUNG.map((word) => (word === "2; 18; 34" ? "2; wide" : word)));
    expect(wrong.code).toBe(2);
    expect(wrong.err).toMatch(/--columns/);
    const one = await typed(HUNG.map((word) => (word === "2; 18; 34" ? "2" : word)));
    expect(one.code).toBe(2);
    expect(one.err).toMatch(/--columns/);
    const stray = await typed(["new", "--width", "36", "--length", "60", "--rows", "4"]);
    expect(stray.code).toBe(2);
    expect(stray.err).toMatch(/--rows[\s\S]*--existing/);
    expect((await typed([...HUNG, "--existing", "paint"])).code).toBe(2);
  });

  test("is planned to the end: no cloth is cut, drawn or bought", async () => {
    const out = emptyFolder();
    const { code, err } = await typed(["plan", DEMO, "--out", out]);
    expect(code).toBe(0);
    expect(err).toMatch(/9 years old|pulled|rings/);
    expect(
      readFileSync(join(out, "lists", "cut-list.csv"), "utf8")
        .trim()
        .split("\n")
        .slice(1),
    ).toEqual(expect.arrayContaining([expect.stringContaining("Lift tube")]));
    expect(readFileSync(join(out, "lists", "cut-list.csv"), "utf8")).not.toMatch(/Face|Lining|Board/);
    expect(readFileSync(join(out, "lists", "shopping-list.csv"), "utf8")).not.toMatch(/cloth|cotton/i);
    const drawn = readdirSync(out, { recursive: true }).map(String);
    expect(drawn.some((name) => /sink.*lock\.svg$/.test(name))).toBe(true);
    expect(drawn.some((name) => /cutting[^/]*\.svg$/.test(name))).toBe(false);
    // Rings are added in the nursery alone.
    expect(drawn.filter((name) => /marking\.svg$/.test(name))).toHaveLength(1);
  });

  test("a cleat alone is a lift by its name", async () => {
    const job = JSON.parse((await typed(["new", "--width", "36", "--length", "60"])).out);
    job.rooms[0].windows[0].shade.making = { lift: { kind: "cleat" } };
    const { code, err } = await typed(["check", "-"], JSON.stringify(job));
    expect(code).toBe(0);
    expect(err).toContain("There is no lock");
  });
});
