import { immutableJSONPatch as applyPatch } from "immutable-json-patch";
import { expect, test } from "vitest";
import { clearPatch, setPatch } from "./pointer.ts";

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
