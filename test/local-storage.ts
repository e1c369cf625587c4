import { afterEach, beforeEach, vi } from "vitest";

/** Gives each test of a file a storage of its own, empty, and modules that have read none before. */
export function withLocalStorage(): Map<string, string> {
  const store = new Map<string, string>();
  beforeEach(() => {
    vi.stubGlobal("localStorage", {
      getItem: (key: string) => store.get(key) ?? null,
      setItem: (key: string, value: string) => store.set(key, value),
    });
  });
  afterEach(() => {
    store.clear();
    vi.unstubAllGlobals();
    vi.resetModules();
  });
  return store;
}
