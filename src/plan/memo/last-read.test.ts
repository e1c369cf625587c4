import { expect, it } from "vitest";
import { LastRead } from "./last-read.ts";

it("keeps what was read last, and makes anew what had to make room", () => {
  const made: string[] = [];
  const left: string[] = [];
  const kept = new LastRead<string, object>(2, (key) => left.push(key));
  const read = (key: string) =>
    kept.of(key, () => {
      made.push(key);
      return { key };
    });
  const first = read("a");
  read("b");
  expect(read("a")).toBe(first);
  read("c");
  expect(left).toEqual(["b"]);
  expect(read("a")).toBe(first);
  expect(read("b")).toEqual({ key: "b" });
  expect(left).toEqual(["b", "c"]);
  expect(made).toEqual(["a", "b", "c", "b"]);
});
