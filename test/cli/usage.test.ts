import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { launched, typed } from "./typed.ts";

describe("what can be typed", () => {
  test("--help names every command", async () => {
    const { code, out } = await typed(["--help"]);
    expect(code).toBe(0);
    for (const command of ["plan", "ask", "check", "new", "schema"])
      expect(out).toMatch(new RegExp(`^  ${command} `, "m"));
  });

  test.each(["plan", "ask", "check", "new", "schema"])("%s --help explains itself", async (command) => {
    const { code, out } = await typed([command, "--help"]);
    expect(code).toBe(0);
    expect(out).toContain(`shadewright ${command}`);
  });

  test("--version is the package's", async () => {
    const { version } = JSON.parse(readFileSync("package.json", "utf8"));
    expect(await typed(["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
  });

  test("-V, -h and help are as usual", async () => {
    const { version } = JSON.parse(readFileSync("package.json", "utf8"));
    expect((await typed(["-V"])).out).toBe(`${version}\n`);
    const long = await typed(["plan", "--help"]);
    expect((await typed(["plan", "-h"])).out).toBe(long.out);
    expect(await typed(["help", "plan"])).toEqual(long);
  });

  test("help for a command that there is not says so in words of ours", async () => {
    const { code, err } = await typed(["help", "plam"]);
    expect(code).toBe(2);
    expect(err).toContain('There is no command "plam".');
    expect(err).not.toContain("(");
  });

  // The script is run by bash itself, in the way it asks a script what could be meant.
  test.each([
    [["pl"], "plan"],
    [["plan", "--pap"], "--paper"],
    [["plan", "--paper", ""], "letter a4"],
    [["ask", "ab"], "about"],
    [["ask", "why", "lock-j"], "lock-jams"],
  ])("bash finishes %j", async (words, finished) => {
    const { code, out } = await typed(["completion", "bash"]);
    expect(code).toBe(0);
    const asked = words.map((word) => `'${word}'`).join(" ");
    const script = `${out}\nCOMP_WORDS=(shadewright ${asked}); COMP_CWORD=${words.length}; _shadewright; echo "\${COMPREPLY[*]}"`;
    expect(execFileSync("bash", ["-c", script], { encoding: "utf8" }).trim()).toBe(finished);
  });

  test("nothing at all shows the help as a trouble", async () => {
    const { code, out, err } = await typed([]);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain("Usage: shadewright");
  });

  test.each([
    [["plam", "job.json"], "plan"],
    [["shcema"], "schema"],
    [["plan", "job.json", "--ot", "x"], "--out"],
    [["plan", "job.json", "--papre", "a4"], "--paper"],
    [["new", "--widht", "3"], "--width"],
  ])("%j is refused with the nearest", async (words, nearest) => {
    const { code, out, err } = await typed(words);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toContain(`Did you mean ${nearest}?`);
  });

  test.each([
    [["plan"], "job"],
    [["new", "--width", "30"], "--length"],
    [["new", "--width", "30", "--length", "50", "--units", "cubits"], "imperial, metric"],
    [["plan", "a.json", "b.json", "--out", "x"], "too many"],
    [["schema", "house"], "job, plan"],
    [["plan", "a.json", "--out"], "argument missing"],
  ])("%j is refused, naming what is wanted", async (words, wanted) => {
    const { code, err } = await typed(words);
    expect(code).toBe(2);
    expect(err).toContain(wanted);
  });

  test.each([
    ["job", 1],
    ["plan", 2],
  ])("schema %s is the published file", async (document, version) => {
    const { code, out } = await typed(["schema", document]);
    expect(code).toBe(0);
    expect(out).toBe(readFileSync(`schema/shadewright-${document}-${version}.schema.json`, "utf8"));
  });
});

test("--json tells machines what could not be typed", async () => {
  const { code, out } = await typed(["plan", "job.json", "--json", "--shde", "a"]);
  expect(code).toBe(2);
  expect(JSON.parse(out)).toMatchObject({
    format: "shadewright-issues",
    issues: [{ field: "(command line)" }],
  });
});

describe("the command as it is shipped", () => {
  test("prints its help", async () => {
    const { code, out } = await launched(["--help"]);
    expect(code).toBe(0);
    expect(out).toContain("Usage: shadewright");
  });

  test("finds the schema beside it", async () => {
    const { code, out } = await launched(["schema", "plan"]);
    expect(code).toBe(0);
    expect(JSON.parse(out).title).toBe("Shadewright plan");
  });

  test("ends with 2 on what it does not know", async () => {
    expect((await launched(["paln"])).code).toBe(2);
  });
});
