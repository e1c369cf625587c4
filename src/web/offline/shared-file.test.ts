import { afterEach, expect, test, vi } from "vitest";
import { keepSharedFile } from "./keep-shared-file.ts";
import { takeSharedFile } from "./take-shared-file.ts";

/** As much of the browser's caches as both sides use. */
function fakeCaches() {
  const all = new Map<string, Map<string, Response>>();
  return {
    has: async (name: string) => all.has(name),
    delete: async (name: string) => all.delete(name),
    open: async (name: string) => {
      const cache = all.get(name) ?? new Map<string, Response>();
      all.set(name, cache);
      return {
        put: async (key: string, value: Response) => void cache.set(key, value),
        match: async (key: string) => cache.get(key),
      };
    },
  };
}

afterEach(() => vi.unstubAllGlobals());

test("what the service worker keeps the page takes, once", async () => {
  vi.stubGlobal("caches", fakeCaches());
  const form = new FormData();
  form.set("file", new File(["{}"], "Öster Straße.json", { type: "application/json" }));
  await keepSharedFile(form);
  const taken = await takeSharedFile();
  expect([taken?.name, await taken?.text(), taken?.type]).toEqual([
    "Öster Straße.json",
    "{}",
    "application/json",
  ]);
  expect(await takeSharedFile()).toBeUndefined();
});
