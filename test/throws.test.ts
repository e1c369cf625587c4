import { expect, test } from "vitest";
import { FLOORS } from "./layers.ts";
import { sourceFiles } from "./source-tree.ts";
import { silentThrowersOf } from "./throws.ts";

const PURE = FLOORS.slice(0, 7).flat();

const from = (text: string) => silentThrowersOf({ path: "src/units/one.ts", text });

test("a function that throws says so above it", () => {
  expect(from("export function f() { throw new Error('invalid'); }")).toHaveLength(1);
  expect(from("/** Says nothing. */ export function f() { throw new Error('invalid'); }")).toHaveLength(1);
  expect(from("/** @throws where there is none */ export function f() { throw 1; }")).toEqual([]);
  expect(from("export class A { /** Says nothing. */ m() { throw 1; } }")).toHaveLength(1);
  expect(from("export class A { /** @throws always */ m() { throw 1; } #n() { throw 1; } }")).toEqual([]);
  expect(from("function f() { throw 1; }")).toEqual([]);
  expect(from("function f() { throw 1; } function g() { f(); } export const h = () => g();")).toHaveLength(1);
  expect(from("export function f() { try { throw 1; } catch {} }")).toEqual([]);
});

test("exported functions of the pure rooms that throw say so", () => {
  const pure = sourceFiles().filter(({ path }) => PURE.includes(path.split("/")[1] ?? ""));
  expect(pure.flatMap(silentThrowersOf)).toEqual([]);
});
