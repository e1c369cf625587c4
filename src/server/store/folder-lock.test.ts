import { mkdtempSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { FolderTaken, lockFolder } from "./folder-lock.ts";

const folder = mkdtempSync(join(tmpdir(), "shadewright-lock-"));
afterAll(() => rmSync(folder, { recursive: true }));

test("a folder is one process's until it lets go", () => {
  const own = join(folder, "a");
  const unlock = lockFolder(own);
  expect(() => lockFolder(own)).toThrow(FolderTaken);
  expect(() => lockFolder(own)).toThrow(String(process.pid));
  expect(statSync(own).mode & 0o777).toBe(0o700);
  unlock();
  lockFolder(own)();
});

test.each([
  ["a process that has ended", "4194305 12345"],
  ["a process whose number another has by now", `${process.pid} 1`],
  ["nobody: it was killed as it wrote", ""],
])("a folder that was left by %s is taken over", (_whom, text) => {
  writeFileSync(join(folder, "in-use"), text);
  const unlock = lockFolder(folder);
  expect(() => lockFolder(folder)).toThrow(FolderTaken);
  unlock();
});
