import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { openJobText } from "../../src/job/index.ts";
import { emptyFolder, typed } from "./typed.ts";

function opened(text: string) {
  const result = openJobText(text);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.job;
}

describe("shadewright new", () => {
  test("prints a job from a width and a length", async () => {
    const { code, out } = await typed(["new", "--width", "35 3/8", "--length", "60"]);
    expect(code).toBe(0);
    // 1 in = 25.4 mm exactly: NIST SP 811 (2008), appendix B.8.
    expect(opened(out).rooms[0]?.windows[0]?.opening).toEqual({ widthsMm: [898.525], heightsMm: [1524] });
  });

  test("takes every option", async () => {
    const words = [
      "new",
      "--name",
      "Käthe’s window",
      "--width",
      "90,5 cm",
      "--length",
      "1500",
      "--units",
      "metric",
    ];
    const more = ["--mount", "outside", "--style", "hobbled", "--place", "eu", "--purpose", "gift"];
    const { code, out } = await typed([...words, ...more]);
    expect(code).toBe(0);
    const job = opened(out);
    expect(job).toMatchObject({
      name: "Käthe’s window",
      place: "eu",
      purpose: "gift",
      units: { system: "metric", ruler: "1 mm" },
    });
    expect(job.id).toMatch(/^kathe-s-window-[0-9a-f]{8}$/);
    expect(job.rooms[0]?.windows[0]).toMatchObject({
      opening: { widthsMm: [905], heightsMm: [1500] },
      shade: { mount: "outside", style: "hobbled" },
    });
  });

  test("writes a new file, and never over one that is there", async () => {
    const file = join(emptyFolder(), "deep", "job.json");
    const words = ["new", "--width", "30", "--length", "50", "--out", file];
    expect((await typed(words)).code).toBe(0);
    opened(readFileSync(file, "utf8"));
    writeFileSync(file, "mine");
    const again = await typed(words);
    expect(again.code).toBe(2);
    expect(again.err).toContain("--out");
    expect(readFileSync(file, "utf8")).toBe("mine");
  });

  test.each([
    ["--width", "a yard or so", "“a yard or so” is not a length"],
    ["--width", "0", "at least 50 mm"],
    ["--length", "-3", "cannot be negative"],
    ["--length", "40 ft", "at most 12000 mm"],
  ])("%s %j is refused by its own name", async (option, value, wanted) => {
    const words = { "--width": "30", "--length": "50", [option]: value };
    const { code, out, err } = await typed([
      "new",
      ...Object.entries(words).map(([key, text]) => `${key}=${text}`),
    ]);
    expect([code, out]).toEqual([2, ""]);
    expect(err.replace(/\s+/g, " ")).toContain(wanted);
    expect(err).toContain(option);
  });

  test("an empty name is refused by its own name", async () => {
    const { code, err } = await typed(["new", "--width", "30", "--length", "50", "--name", ""]);
    expect(code).toBe(2);
    expect(err).toContain("--name");
  });
});
