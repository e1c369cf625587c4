import { createReadStream } from "node:fs";
import { type Job, LARGEST_JOB_CHARS, openJobText } from "../job/index.ts";
import { BadInput, badInput } from "./bad-input.ts";
import { aboutPath } from "./file-trouble.ts";
import type { Io } from "./io.ts";

/** Reads, checks and completes a job file, `-` for the standard input. Throws `BadInput`. */
export async function readJob(path: string, io: Io): Promise<Job> {
  const text = await readText(path, path === "-" ? io.stdin : createReadStream(path));
  const opened = openJobText(text);
  if (!opened.ok) throw new BadInput(path === "-" ? "The job on standard input" : path, opened.issues);
  return opened.job;
}

/** Stops as soon as there is more than any job holds, however much more is on the way. */
async function readText(path: string, chunks: AsyncIterable<Uint8Array>): Promise<string> {
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
      throw badInput("(file)", "bytes that are not UTF-8", "a job document saved as UTF-8 text");
    }
    throw aboutPath(error, "JOB", path);
  }
  return parts.join("");
}
