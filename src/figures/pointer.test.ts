import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { expect, test } from "vitest";
import { clearPatch, setPatch, valueAt } from "./pointer.ts";

const set = (document: unknown, pointer: string, value: unknown) =>
  applyPatch(document as never, setPatch(document, pointer, value) as never);

test("a value is set where its parents are missing, and where one of them is no object", () => {
  expect(set({ rooms: [{}] }, "/rooms/0/inLine/folds", "spacing")).toEqual({
    rooms: [{ inLine: { folds: "spacing" } }],
  });
  // RFC 6902, 4.1: adding to a member that exists takes its place.
  expect(set({ rooms: [{ inLine: true }] }, "/rooms/0/inLine/folds", "spacing")).toEqual({
    rooms: [{ inLine: { folds: "spacing" } }],
  });
});

test("a room stays in line when its last wish is taken away", () => {
  const document = { rooms: [{ inLine: { without: ["a"] } }] };
  const patch = clearPatch(document, "/rooms/0/inLine/without");
  expect(applyPatch(document as never, patch as never)).toEqual({ rooms: [{ inLine: {} }] });
});

test("reads RFC 6901 escapes", () => {
  expect(valueAt({ "a/b": { "m~n": 8 } }, "/a~1b/m~0n")).toBe(8);
});

test("adds a missing parent whole", () => {
  expect(setPatch({}, "/making/fold/rows", 4)).toEqual([
    { op: "add", path: "/making", value: { fold: { rows: 4 } } },
  ]);
  expect(setPatch({ making: { fold: {} } }, "/making/fold/rows", 4)).toEqual([
    { op: "add", path: "/making/fold/rows", value: 4 },
  ]);
});

test("removes the parents that it leaves empty, and no others", () => {
  expect(clearPatch({ making: { fold: { rows: 4 } } }, "/making/fold/rows")).toEqual([
    { op: "remove", path: "/making" },
  ]);
  expect(clearPatch({ making: { fold: { rows: 4 }, lift: {} } }, "/making/fold/rows")).toEqual([
    { op: "remove", path: "/making/fold" },
  ]);
  expect(clearPatch({ cloth: { note: "x" } }, "/cloth/note")).toEqual([
    { op: "remove", path: "/cloth/note" },
  ]);
  expect(clearPatch({}, "/making/fold/rows")).toEqual([]);
});
