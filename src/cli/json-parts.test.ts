import fc from "fast-check";
import { expect, test } from "vitest";
import { jsonParts, writeJson } from "./json-parts.ts";

const withoutUndefined = fc.object({ maxDepth: 4, withNullPrototype: false });

test("parts are the text of JSON.stringify", () => {
  fc.assert(
    fc.property(fc.oneof(fc.jsonValue(), withoutUndefined), (value) => {
      expect([...jsonParts(value)].join("")).toBe(JSON.stringify(value, null, 2));
    }),
  );
});

test("a long list comes in many parts, none of them long", async () => {
  const value = {
    name: "demo",
    cuts: Array.from({ length: 20_000 }, (_, n) => ({
      number: n,
      frees: [`piece ${n}\nof two lines`],
      at: [],
    })),
    nothing: undefined,
    empty: [],
  };
  const parts = [...jsonParts(value)];
  expect(parts.join("")).toBe(JSON.stringify(value, null, 2));
  expect(Math.max(...parts.map((part) => part.length))).toBeLessThan(80_000);
  const chunks: Uint8Array[] = [];
  await writeJson(value, async (chunk) => {
    chunks.push(chunk);
  });
  expect(chunks.length).toBeGreaterThan(10);
  expect(Buffer.concat(chunks).toString("utf8")).toBe(`${JSON.stringify(value, null, 2)}\n`);
});
