import { expect, test } from "vitest";
import { smaller } from "./smaller.ts";

test("a document keeps what goes wrong and hardly more", async () => {
  const text = JSON.stringify({
    a: { b: [1, 2, { bad: 3.25, good: "much ".repeat(20) }], c: "more" },
    d: [[], {}],
  });
  const isAlike = async (one: string) => /"bad":\d/.test(one);
  expect(await smaller(text, isAlike, 600)).toBe('{"a":{"b":[{"bad":3}]}}');
});

test("characters that are no document are left out as well", async () => {
  const text = `{"a": ${"x".repeat(200)}\u0000${"y".repeat(300)}`;
  expect(await smaller(text, async (one) => one.includes("\u0000"), 600)).toBe("\u0000");
});

test("what does not go wrong again stays as it is, and it ends", async () => {
  expect(await smaller('{"a":1}', async () => false, 600)).toBe('{"a":1}');
});
