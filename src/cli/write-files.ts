import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { mkdir, open, readdir, realpath, rename, rm, writeFile } from "node:fs/promises";
import { basename, dirname, join, relative, sep } from "node:path";
import { badInput } from "./bad-input.ts";
import { aboutPath } from "./file-trouble.ts";
import { plainLine } from "./plain-text.ts";
import { LEAST_WRITTEN } from "./write-in-parts.ts";

/** A file to write: its path inside the folder, with forward slashes, and what is in it. */
export interface OutFile {
  path: string;
  /** The whole of it, or what writes it piece by piece; a piece is left as it is once it is handed over. */
  content: string | Uint8Array | ((write: (chunk: Uint8Array) => Promise<void>) => Promise<void>);
  /** A job as it was worked out: it takes the place of the one of an earlier run, unless that is what was read. */
  isResult?: true;
}

/** 128 and the number of the signal, as shells count (POSIX.1-2017, exit status of a command that a signal ended). */
const SIGNAL_EXITS = { SIGINT: 130, SIGTERM: 143 } as const;

/**
 * Writes files into a folder, all of them or none: each is written aside first and takes its name when the
 * last one is whole. Never takes the place of a job file.
 * @returns the paths that were written, in order
 */
export async function writeFiles(
  folder: string,
  files: AsyncIterable<OutFile>,
  jobPath: string | undefined,
): Promise<string[]> {
  let aside: string | undefined;
  const tidy = () => {
    if (aside !== undefined) rmSync(aside, { recursive: true, force: true, maxRetries: 3 });
  };
  const leave = (signal: keyof typeof SIGNAL_EXITS) => {
    tidy();
    process.exit(SIGNAL_EXITS[signal]);
  };
  process.once("SIGINT", leave);
  process.once("SIGTERM", leave);
  try {
    await mkdir(folder, { recursive: true });
    // At once: a signal that came while the folder is made would not know of it.
    aside = mkdtempSync(join(folder, ".shadewright-"));
    const paths: string[] = [];
    const asideFolders = new Folders(aside);
    const there = new Present(folder);
    const pending = new Set<Promise<void>>();
    const failures: unknown[] = [];
    for await (const { path, content, isResult } of files) {
      if (await there.has(path)) await refuseJobFile(join(folder, path), jobPath, isResult);
      asideFolders.make(path);
      const writing = writeContent(join(aside, path), content);
      paths.push(path);
      if (typeof content === "function") {
        await writing;
        continue;
      }
      // The next is made while this one is written.
      const settled: Promise<void> = writing
        .catch((error: unknown) => {
          failures.push(error);
        })
        .finally(() => pending.delete(settled));
      pending.add(settled);
      if (pending.size >= MOST_AT_ONCE) await Promise.race(pending);
      if (failures.length > 0) throw failures[0];
    }
    await Promise.all(pending);
    if (failures.length > 0) throw failures[0];
    const folders = new Folders(folder);
    const whole = aside;
    for (let from = 0; from < paths.length; from += MOST_AT_ONCE) {
      const some = paths.slice(from, from + MOST_AT_ONCE);
      for (const path of some) folders.make(path);
      await Promise.all(some.map((path) => rename(join(whole, path), join(folder, path))));
    }
    return paths;
  } catch (error) {
    throw aboutPath(error, "--out", folder);
  } finally {
    process.off("SIGINT", leave);
    process.off("SIGTERM", leave);
    tidy();
  }
}

const MOST_AT_ONCE = 16;

/**
 * Makes the folder of each file once. At once: one that a thread makes, with all above it, would bring the folder back that
 * a signal has tidied away meanwhile.
 */
class Folders {
  readonly #base: string;
  readonly #made = new Set<string>();

  constructor(base: string) {
    this.#base = base;
  }

  make(path: string): void {
    const folder = dirname(path);
    if (this.#made.has(folder)) return;
    mkdirSync(join(this.#base, folder), { recursive: true });
    this.#made.add(folder);
  }
}

/** What lay in a folder before, looked up once for each of its parts. */
class Present {
  readonly #base: string;
  readonly #names = new Map<string, ReadonlySet<string>>();

  constructor(base: string) {
    this.#base = base;
  }

  async has(path: string): Promise<boolean> {
    const folder = dirname(path);
    const known = this.#names.get(folder) ?? new Set(await readdir(join(this.#base, folder)).catch(() => []));
    this.#names.set(folder, known);
    return known.has(basename(path));
  }
}

async function writeContent(path: string, content: OutFile["content"]): Promise<void> {
  if (typeof content !== "function") return writeFile(path, content);
  const file = await open(path, "w");
  try {
    // A workbook comes in tens of thousands of small pieces, and each write waits for a thread of its own.
    const gathered: Uint8Array[] = [];
    let length = 0;
    const writeGathered = async () => {
      await file.writeFile(Buffer.concat(gathered, length));
      gathered.length = 0;
      length = 0;
    };
    await content(async (chunk) => {
      gathered.push(chunk);
      length += chunk.length;
      if (length >= LEAST_WRITTEN) await writeGathered();
    });
    if (length > 0) await writeGathered();
  } finally {
    await file.close();
  }
}

/** Writes one new file and refuses to take the place of any other. */
export async function writeNewFile(path: string, content: string | Uint8Array): Promise<void> {
  const aside = `${path}.${process.pid}.part`;
  let claimed = false;
  try {
    await mkdir(dirname(path), { recursive: true });
    // `wx` claims the name, so that two commands at once cannot both have it.
    await (await open(path, "wx")).close();
    claimed = true;
    await writeFile(aside, content);
    await rename(aside, path);
  } catch (error) {
    if (claimed) await rm(path, { force: true });
    await rm(aside, { force: true });
    if ((error as NodeJS.ErrnoException).code === "EEXIST") {
      throw badInput(
        "--out",
        JSON.stringify(path),
        "a new name; there is a file of this name and it is kept",
      );
    }
    throw aboutPath(error, "--out", path);
  }
}

const JOB_MARK = /"format"\s*:\s*"shadewright-job"/;

async function refuseJobFile(target: string, jobPath: string | undefined, isResult = false): Promise<void> {
  const real = await realpath(target).catch(() => undefined);
  if (real === undefined) return;
  const isOwn = jobPath !== undefined && real === (await realpath(jobPath).catch(() => undefined));
  if (isOwn || (!isResult && JOB_MARK.test(await beginning(real)))) {
    throw badInput("--out", JSON.stringify(target), "another folder; a job file is there and it is kept");
  }
}

async function beginning(path: string): Promise<string> {
  const file = await open(path, "r");
  try {
    const { buffer, bytesRead } = await file.read({ buffer: Buffer.alloc(4096) });
    return buffer.toString("utf8", 0, bytesRead);
  } finally {
    await file.close();
  }
}

/** What an earlier run left in these parts of a folder, in a line; nothing where it left nothing. */
export async function leftoversText(folder: string, parts: string[], written: string[]): Promise<string> {
  const left = await leftovers(folder, parts, written);
  if (left.length === 0) return "";
  const more = left.length > 3 ? ` and ${left.length - 3} more` : "";
  return `From an earlier run, not of this plan: ${left.slice(0, 3).map(plainLine).join(", ")}${more}.\n`;
}

/** Files in these parts of a folder that are not among `written`. */
async function leftovers(folder: string, parts: string[], written: string[]): Promise<string[]> {
  const known = new Set(written);
  const present = await Promise.all(parts.map((part) => filesIn(folder, part)));
  return present
    .flat()
    .filter((path) => !known.has(path))
    .sort();
}

async function filesIn(folder: string, part: string): Promise<string[]> {
  const entries = await readdir(join(folder, part), { recursive: true, withFileTypes: true }).catch(() => []);
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(folder, join(entry.parentPath, entry.name)).split(sep).join("/"));
}
