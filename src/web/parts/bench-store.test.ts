import "fake-indexeddb/auto";
import { IDBFactory } from "fake-indexeddb";
import { beforeEach, expect, test, vi } from "vitest";
import { readBench, writeParts } from "../persistence/bench-shelf.ts";
import { closeShelfDatabase } from "../persistence/database.ts";
import { layOut, layOutAll, useBench } from "./bench-store.ts";

const names = () => useBench.getState().parts?.eyes?.map(({ name }) => name);

beforeEach(() => {
  closeShelfDatabase();
  globalThis.indexedDB = new IDBFactory();
  useBench.setState({ trouble: false }, true);
});

test("what is laid out before the bench was read takes nothing from it", async () => {
  await writeParts([{ kind: "eyes", part: { id: "old", name: "Old eye" } }]);
  layOut("eyes", "new", "New eye");
  await vi.waitFor(() => expect(names()).toEqual(["Old eye", "New eye"]));
  await vi.waitFor(async () => expect((await readBench()).eyes).toHaveLength(2));
});

test("a whole file is laid out in one write, and a part of an id that lies there gives way", async () => {
  await writeParts([{ kind: "eyes", part: { id: "a", name: "First" } }]);
  const file = { format: "shadewright-parts", version: 1 } as const;
  const eyes = [
    { id: "a", name: "Second" },
    { id: "b", name: "Other" },
  ];
  expect(layOutAll({ ...file, eyes } as Parameters<typeof layOutAll>[0])).toBe(2);
  await vi.waitFor(() => expect(names()).toEqual(["Second", "Other"]));
  await vi.waitFor(async () =>
    expect((await readBench()).eyes?.map(({ name }) => name)).toEqual(["Second", "Other"]),
  );
});
