import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

const HERE = new URL("./", import.meta.url);

test("every kept drawing is still drawn by a case, and none twice", () => {
  const cases = readdirSync(HERE)
    .filter((name) => name.endsWith(".test.ts"))
    .flatMap((name) => [...readFileSync(new URL(name, HERE), "utf8").matchAll(/^draws\("([^"]+)"/gm)])
    .map(([, name]) => `${name}.svg`);
  expect(new Set(cases).size).toBe(cases.length);
  for (const kept of readdirSync(new URL("output/", HERE))) expect(cases).toContain(kept);
});
