import { expect, test } from "vitest";
import { importCirclesOf } from "./import-circles.ts";
import { sourceFiles } from "./source-tree.ts";

test("no file imports itself by way of others", () => {
  expect(importCirclesOf(sourceFiles())).toEqual([]);
});

test("a circle is seen, of types and of lazy imports too, and what only leads to it is left out", () => {
  const files = [
    { path: "src/plan/start.ts", text: `import { a } from "./a.ts";` },
    { path: "src/plan/a.ts", text: `import type { B } from "./b.ts";` },
    { path: "src/plan/b.ts", text: `export const c = () => import("../cloth/c.ts");` },
    { path: "src/cloth/c.ts", text: `export * from "../plan/a.ts";\nimport { d } from "./d.ts";` },
    { path: "src/cloth/d.ts", text: `import { e } from "./not-here.ts";` },
    { path: "src/cloth/own.ts", text: `import { a } from "./own.ts";` },
  ];
  expect(importCirclesOf(files)).toEqual([
    ["src/cloth/c.ts", "src/plan/a.ts", "src/plan/b.ts"],
    ["src/cloth/own.ts"],
  ]);
});
