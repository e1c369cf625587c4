import type * as z from "zod";
import { issuesOf, readDocument } from "../../job/index.ts";
import { Refused } from "../refused.ts";

/** Largest body of requests that carry no job. */
const SMALL_BYTES = 256 * 1024;
/** The largest job that is read, and what goes round it. */
const JOB_BYTES = 24 * 1024 * 1024;
const CARRIES_JOB = /^\/api\/jobs(?:\/[^/]+\/operations)?$/;

/**
 * The body of a request as JSON, refused before it is held whole where it is too large.
 * @throws {Refused} what is no JSON, too large, or nested too deep
 */
export async function readBody(request: Request): Promise<unknown> {
  if (request.method === "GET" || request.body === null) return undefined;
  const most = CARRIES_JOB.test(new URL(request.url).pathname) ? JOB_BYTES : SMALL_BYTES;
  const bytes = await bytesOf(request.body, most);
  if (bytes.length === 0) return undefined;
  if (!/^application\/json\b/i.test(request.headers.get("content-type") ?? "")) {
    throw new Refused(415, "The request wants JSON.");
  }
  const read = readDocument(new TextDecoder().decode(bytes), "a request");
  if (!read.ok) throw new Refused(400, "The request cannot be read.", read.issues);
  return read.document;
}

async function bytesOf(body: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of body as unknown as AsyncIterable<Uint8Array>) {
    length += part.length;
    if (length > most) throw new Refused(413, `The request is larger than ${Math.round(most / 1024)} kB.`);
    parts.push(part);
  }
  return Buffer.concat(parts);
}

/**
 * The body by its schema.
 * @throws {Refused} with the fields that are wrong
 */
export function bodyAs<T>(schema: z.ZodType<T>, body: unknown): T {
  const parsed = schema.safeParse(body);
  if (parsed.success) return parsed.data;
  throw new Refused(400, "The request cannot be used.", issuesOf(parsed.error, body));
}
