import { spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { onTestFinished } from "vitest";
import { main } from "../../src/cli/main.ts";

export interface Ending {
  code: number | null;
  out: string;
  err: string;
}

async function* inChunks(bytes: Uint8Array, size = 65_536): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

/** Runs a command line inside this process: quick enough to try thousands. */
export async function typed(
  words: string[],
  stdin: string | Uint8Array | AsyncIterable<Uint8Array> = "",
): Promise<Ending> {
  let out = "";
  let err = "";
  const utf8 = new TextDecoder();
  const code = await main(words, {
    stdin:
      typeof stdin === "string"
        ? inChunks(new TextEncoder().encode(stdin))
        : "length" in stdin
          ? inChunks(stdin)
          : stdin,
    out: (text) => {
      out += text;
    },
    outPart: async (bytes) => {
      out += utf8.decode(bytes, { stream: true });
    },
    err: (text) => {
      err += text;
    },
    columns: 100,
  });
  return { code, out, err };
}

const BIN = resolve("bin/shadewright.mjs");

/** Runs the real command in a process of its own. */
export function launched(words: string[], stdin = "", cwd = process.cwd()): Promise<Ending> {
  return new Promise((done, fail) => {
    const child = spawn(process.execPath, [BIN, ...words], { cwd });
    let out = "";
    let err = "";
    child.stdout.setEncoding("utf8").on("data", (text) => {
      out += text;
    });
    child.stderr.setEncoding("utf8").on("data", (text) => {
      err += text;
    });
    child.on("error", fail);
    child.on("close", (code) => done({ code, out, err }));
    // The command may end before it has read all: that is not this test's trouble.
    child.stdin.on("error", () => {});
    child.stdin.end(stdin);
  });
}

/** An empty folder that goes when the test ends. */
export function emptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "shadewright-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A line of a stack trace. */
export const STACK_LINE = /^\s+at .+[:(]\d+|\bat async\b|node:internal/m;
