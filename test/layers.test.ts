import { basename } from "node:path";
import { describe, expect, test } from "vitest";
import { breachesOf } from "./layers.ts";
import { sourceFiles } from "./source-tree.ts";

const files = sourceFiles();

describe("the house", () => {
  test("has files to look at", () => {
    expect(files.length).toBeGreaterThan(30);
  });

  test("each file sits in a known room, imports point down, pure rooms are pure", () => {
    expect(files.flatMap(breachesOf)).toEqual([]);
  });

  test("files are named in lower case with hyphens, after the one thing inside", () => {
    const odd = files.filter(({ path }) => !/^[a-z0-9]+(?:-[a-z0-9]+)*(?:\.d)?\.tsx?$/.test(basename(path)));
    const vague = files.filter(({ path }) => /(?:^|\/)(?:utils?|helpers?|common|misc)(?:[./-])/.test(path));
    expect([...odd, ...vague].map(({ path }) => path)).toEqual([]);
  });

  test("files are short", () => {
    const lengths = files.map(({ path, text }) => ({ path, lines: text.split("\n").length }));
    expect(lengths.filter(({ lines }) => lines > 600)).toEqual([]);
    const sorted = lengths.map(({ lines }) => lines).sort((a, b) => a - b);
    expect(sorted[Math.floor(sorted.length / 2)]).toBeLessThanOrEqual(100);
  });
});

describe("a breach is seen", () => {
  const breaches = (path: string, text: string) => breachesOf({ path, text }).length;

  test.each([
    ["an unknown room", "src/helpers/a.ts", "export const a = 1;"],
    ["an import up", "src/units/a.ts", `import { plan } from "../plan/index.ts";`],
    ["a type imported up", "src/units/a.ts", `import type { Plan } from "../plan/index.ts";`],
    ["an inline type imported up", "src/units/a.ts", `export type A = import("../plan/index.ts").Plan;`],
    ["a re-export from above", "src/job/a.ts", `export * from "../plan/index.ts";`],
    ["a lazy import up", "src/plan/a.ts", `export const a = () => import("../workbook/index.ts");`],
    ["stages that import each other", "src/cloth/a.ts", `import { a } from "../lift/index.ts";`],
    ["edges that import each other", "src/cli/a.ts", `import { a } from "../web/index.ts";`],
    ["the front door from inside", "src/cli/a.ts", `import { a } from "../index.ts";`],
    ["a way past the door", "src/plan/a.ts", `import { a } from "../units/length.ts";`],
    ["a kind of style from another", "src/styles/kinds/a/a.ts", `import { b } from "../b/b.ts";`],
    ["a kind of style from below", "src/styles/base/a.ts", `import { b } from "../kinds/b/b.ts";`],
    ["a file of tests", "src/plan/a.ts", `import { a } from "../../test/layers.ts";`],
    ["node in a pure room", "src/tables/a.ts", `import { a } from "node:fs";`],
    ["the clock", "src/plan/a.ts", "export const a = Date.now();"],
    ["the date", "src/plan/a.ts", "export const a = new Date();"],
    ["chance", "src/plan/a.ts", "export const a = Math.random();"],
    ["chance by another spelling", "src/plan/a.ts", `export const a = Math["random"]();`],
    ["the stopwatch", "src/drawing/a.ts", "export const a = performance.now();"],
    ["the console", "src/job/a.ts", `console.log("a");`],
    ["the machine's language", "src/units/a.ts", "export const a = (1.5).toLocaleString();"],
  ])("%s", (_what, path, text) => {
    expect(breaches(path, text)).toBe(1);
  });

  test.each([
    ["an import down", "src/plan/a.ts", `import { a } from "../units/index.ts";`],
    ["a side door", "src/cli/a.ts", `import { a } from "../drawing/dxf/index.ts";`],
    ["its own room", "src/plan/a.ts", `import { a } from "./b.ts";`],
    ["a folder of its own room", "src/styles/base/a.ts", `import { a } from "../b.ts";`],
    ["a library", "src/job/a.ts", `import * as z from "zod";`],
    ["node at the edge", "src/cli/a.ts", `import { a } from "node:fs";`],
    ["the clock at the edge", "src/cli/a.ts", "export const a = Date.now();"],
    ["a given date", "src/plan/a.ts", `export const a = new Date("2001-01-01");`],
    ["a field that is called like a global", "src/plan/a.ts", "export const a = (b) => b.console;"],
    ["words in a comment", "src/plan/a.ts", "// Math.random() has no place here\nexport const a = 1;"],
  ])("%s is none", (_what, path, text) => {
    expect(breaches(path, text)).toBe(0);
  });
});
