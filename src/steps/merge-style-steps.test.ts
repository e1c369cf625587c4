import { expect, test } from "vitest";
import type { Step, StyleStep } from "../shade-plan/index.ts";
import { mergeStyleSteps } from "./merge-style-steps.ts";

const step = (id: string): Step => ({
  id,
  chapter: id.startsWith("cut") ? "cut" : "make",
  title: id,
  text: id,
});
const usual = ["cut-face", "make-hem", "make-rows", "make-rings"].map(step);
const merged = (...own: StyleStep[]) => mergeStyleSteps(usual, own).map(({ id }) => id);

test("a style's step goes after, before or in place of a usual one", () => {
  expect(merged({ ...step("make-pleats"), after: "make-hem" })).toEqual([
    "cut-face",
    "make-hem",
    "make-pleats",
    "make-rows",
    "make-rings",
  ]);
  expect(merged({ ...step("make-tape"), before: "make-hem" })[1]).toBe("make-tape");
  expect(merged({ ...step("make-tucks"), replaces: ["make-rows"] })).toEqual([
    "cut-face",
    "make-hem",
    "make-tucks",
    "make-rings",
  ]);
});

test("several after one another keep their order by naming each other", () => {
  expect(
    merged({ ...step("make-a"), after: "make-hem" }, { ...step("make-b"), after: "make-a" }).slice(1, 4),
  ).toEqual(["make-hem", "make-a", "make-b"]);
});

test("a step whose neighbour is not there ends its chapter", () => {
  expect(merged({ ...step("cut-tape"), after: "cut-nothing" })[1]).toBe("cut-tape");
  expect(merged({ ...step("make-tape"), after: "make-nothing" }).at(-1)).toBe("make-tape");
});

test("a usual step that is only named to be replaced goes, even by two", () => {
  expect(merged({ ...step("make-x"), replaces: ["make-rows", "make-rings"] })).toEqual([
    "cut-face",
    "make-hem",
    "make-x",
  ]);
});

test("a step that takes another’s place may carry on its id", () => {
  expect(
    merged({ ...step("make-rings"), replaces: ["make-rings"] }).filter((id) => id === "make-rings"),
  ).toEqual(["make-rings"]);
});
