import { createReadStream } from "node:fs";
import {
  changedSince,
  type Job,
  LARGEST_JOB_CHARS,
  openJobText,
  openPartsText,
  type PartsFile,
  withPartsFrom,
} from "../job/index.ts";
import { type OpenedCutting, openCuttingText } from "../plan/index.ts";
import { listed } from "../words/index.ts";
import { BadInput, badInput } from "./bad-input.ts";
import { aboutPath } from "./file-trouble.ts";
import type { Io } from "./io.ts";
import { plainLine, wrapped } from "./plain-text.ts";

/** Reads, checks and completes a job file, `-` for the standard input. Throws `BadInput`. */
export async function readJob(path: string, io: Io): Promise<Job> {
  const text = await readText(path, path === "-" ? io.stdin : createReadStream(path));
  const opened = openJobText(text);
  if (!opened.ok) throw new BadInput(path === "-" ? "The job on standard input" : path, opened.issues);
  return opened.job;
}

/** The option of every command that chooses hardware. */
export const PARTS_OPTION = [
  "--parts <file>",
  "your own parts beside those of the job: locks, cords, eyes, rings, tubes, drives, cloths and more",
] as const;

/** Reads and checks a parts file. Throws `BadInput`. */
export async function readParts(path: string): Promise<PartsFile> {
  const opened = openPartsText(await readText(path, createReadStream(path), "PARTS"));
  if (!opened.ok) throw new BadInput(path, opened.issues);
  return opened.parts;
}

/** Reads and checks a cutting plan that was written before. Throws `BadInput`. */
export async function readCutting(path: string): Promise<OpenedCutting> {
  const opened = openCuttingText(await readText(path, createReadStream(path), "CUTTING"));
  if (!opened.ok) throw new BadInput(path, opened.issues);
  return opened.cutting;
}

/**
 * A job with a copy of the parts of a file. What the job has already stays as it was planned with, and where the file
 * holds another version that is said.
 */
export async function readJobWith(path: string, partsPath: string | undefined, io: Io): Promise<Job> {
  const job = await readJob(path, io);
  if (partsPath === undefined) return job;
  const parts = await readParts(partsPath);
  for (const { name, fields } of changedSince(job, parts)) {
    const line = `“${plainLine(name)}” is another in ${plainLine(partsPath)} than in the job: ${listed(fields)}. The job keeps its own copy.`;
    io.err(`${wrapped(line, io.columns - 2, "  ")}\n`);
  }
  return withPartsFrom(job, parts);
}

/** Stops as soon as there is more than any job holds, however much more is on the way. */
async function readText(
  path: string,
  chunks: AsyncIterable<Uint8Array>,
  argument: "JOB" | "PARTS" | "CUTTING" = "JOB",
): Promise<string> {
  const decoder = new TextDecoder("utf-8", { fatal: true });
  const parts: string[] = [];
  let length = 0;
  try {
    for await (const chunk of chunks) {
      const part = decoder.decode(chunk, { stream: true });
      length += part.length;
      if (length > LARGEST_JOB_CHARS) {
        throw badInput("(file)", `more than ${LARGEST_JOB_CHARS} characters`, "less; split the job in two");
      }
      parts.push(part);
    }
    parts.push(decoder.decode());
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ERR_ENCODING_INVALID_ENCODED_DATA") {
      throw badInput("(file)", "bytes that are not UTF-8", "a document saved as UTF-8 text");
    }
    throw aboutPath(error, argument, path);
  }
  return parts.join("");
}
