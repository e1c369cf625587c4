import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { type OutFile, writeFiles } from "./write-files.ts";

const folder = mkdtempSync(join(tmpdir(), "shadewright-write-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const bytes = (count: number, from = 0) => Uint8Array.from({ length: count }, (_, n) => (from + n) % 251);

/** A file that comes in pieces of so many bytes. */
function inPieces(path: string, sizes: readonly number[]): OutFile {
  return {
    path,
    content: async (write) => {
      let from = 0;
      for (const size of sizes) {
        await write(bytes(size, from));
        from += size;
      }
    },
  };
}

test("a file that comes in pieces is whole, small or large as they are", async () => {
  const cases = {
    "none.bin": [],
    "small.bin": Array.from({ length: 20_000 }, (_, n) => n % 9),
    "just-full.bin": [65_535, 1],
    "large.bin": [200_000, 1, 0, 70_000],
  };
  async function* files() {
    for (const [path, sizes] of Object.entries(cases)) yield inPieces(path, sizes);
  }
  expect(await writeFiles(folder, files(), undefined)).toEqual(Object.keys(cases));
  for (const [path, sizes] of Object.entries(cases)) {
    const total = sizes.reduce((sum, size) => sum + size, 0);
    expect(readFileSync(join(folder, path)).equals(bytes(total)), path).toBe(true);
  }
});

test("a file that fails on its way leaves nothing, and what was gathered of it is not written", async () => {
  async function* files(): AsyncGenerator<OutFile> {
    yield {
      path: "half.bin",
      content: async (write) => {
        await write(bytes(10));
        throw new Error("no more of it");
      },
    };
  }
  await expect(writeFiles(join(folder, "failed"), files(), undefined)).rejects.toThrow("no more of it");
  expect(() => readFileSync(join(folder, "failed", "half.bin"))).toThrow();
});
