import {
  closeSync,
  createReadStream,
  createWriteStream,
  existsSync,
  fsyncSync,
  openSync,
  renameSync,
} from "node:fs";
import { createInterface } from "node:readline";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { createGunzip, createGzip } from "node:zlib";
import type { Command } from "commander";
import { badInput } from "../bad-input.ts";
import { aboutPath } from "../file-trouble.ts";
import type { Io } from "../io.ts";
import { FOLDER_OPTION, withStore } from "./store-option.ts";

/** `shadewright backup` and `restore`: a workroom’s database as one file. */
export function addBackup(program: Command, io: Io): void {
  program
    .command("backup")
    .description("Write every workroom of the database into one file, which is as private as the database")
    .argument("<file>", "file to write, .jsonl.gz")
    .option(...FOLDER_OPTION)
    .action((file: string, { folder }: { folder?: string }) => backUp(file, folder, io));
  program
    .command("restore")
    .description("Put a backup into an empty database")
    .argument("<file>", "file that backup wrote")
    .option(...FOLDER_OPTION)
    .action((file: string, { folder }: { folder?: string }) => restore(file, folder, io));
}

async function backUp(file: string, folder: string | undefined, io: Io): Promise<void> {
  const { backupLines } = await import("../../server/index.ts");
  const part = `${file}.part`;
  await withStore(folder, async (store) => {
    await pipeline(Readable.from(backupLines(store)), createGzip(), createWriteStream(part, { mode: 0o600 }));
  }).catch((error) => {
    throw aboutPath(error, "<file>", file);
  });
  // A file of that name is a whole backup, whatever happens.
  const handle = openSync(part, "r");
  fsyncSync(handle);
  closeSync(handle);
  renameSync(part, file);
  io.err(
    `Wrote ${file}. It holds everything, names of clients too: keep it where the database may be kept.\n`,
  );
}

async function restore(file: string, folder: string | undefined, io: Io): Promise<void> {
  if (!existsSync(file)) throw badInput("<file>", file, "a file that backup wrote");
  const { BackupUnfit, restoreLines } = await import("../../server/index.ts");
  const rows = await withStore(folder, async (store, door) => {
    const source = createGunzip();
    const stop = new AbortController();
    const reading = pipeline(createReadStream(file), source, { signal: stop.signal });
    const lines = createInterface({ input: source, crlfDelay: Number.POSITIVE_INFINITY });
    // Who reads the lines is told; where nobody reads them any more there is nobody to tell.
    reading.catch(() => {});
    lines.on("error", () => {});
    try {
      const count = await restoreLines(store, lines);
      await door.begin();
      return count;
    } catch (error) {
      if (error instanceof BackupUnfit) throw badInput("<file>", file, error.message);
      if (String((error as { code?: unknown }).code).startsWith("Z_")) {
        throw badInput("<file>", file, "a whole backup: this one is damaged or cut short");
      }
      throw error;
    } finally {
      // Refused at its first line, it is read no further.
      stop.abort();
      await reading.catch(() => {});
    }
  });
  io.err(`Put back ${rows} rows.\n`);
}
