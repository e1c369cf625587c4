import { readFileSync } from "node:fs";
import fc from "fast-check";
import type { JobInput } from "../../src/job/index.ts";
import { anyJob as anyDocument } from "../any-job.ts";
import { anyJob } from "../arbitrary-job.ts";
import { workroomJob } from "../workroom-job.ts";
import { type Holder, type JsonValue, placesIn } from "./places.ts";

/** Cases of one pool: so many share the cost of drawing it. */
const CASES = 20_000;
const DRAWN = 40;
/** Characters: what is spoilt at one place says no more where there is more of it. */
const SHORT = 4000;

/** Job documents, allowed by the schema, and what of theirs stands where: two of them cross into a third. */
interface Pool {
  texts: readonly string[];
  short: readonly string[];
  /** By the path of the object that holds it, whichever window or piece it is of: fields with their values. */
  fields: ReadonlyMap<string, readonly { key: string; value: JsonValue }[]>;
  /** How many objects stand at a path, and how many of them have the field. */
  counts: ReadonlyMap<string, number>;
}

const WRITTEN = ["examples/lantern-row.json", "examples/weir-cottage.json", "test/documents/job-v1.json"].map(
  (path) => JSON.stringify(JSON.parse(readFileSync(path, "utf8"))),
);

function drawPool(number: number): Pool {
  const drawn = [anyJob, anyDocument(), workroomJob].flatMap((jobs: fc.Arbitrary<JobInput>) =>
    fc.sample(jobs, { seed: number, numRuns: DRAWN }).map((job) => JSON.stringify(job)),
  );
  const texts = [...drawn, ...WRITTEN];
  const fields = new Map<string, { key: string; value: JsonValue }[]>();
  const counts = new Map<string, number>();
  const count = (path: string) => counts.set(path, (counts.get(path) ?? 0) + 1);
  const seen = new Set<Holder>();
  for (const { holder, path, key } of texts.flatMap((text) => placesIn(JSON.parse(text)))) {
    if (Array.isArray(holder)) continue;
    if (!seen.has(holder)) count(path);
    seen.add(holder);
    count(`${path}/${key}`);
    const list = fields.get(path) ?? [];
    list.push({ key, value: holder[key] as JsonValue });
    fields.set(path, list);
  }
  return { texts, short: texts.filter(({ length }) => length <= SHORT), fields, counts };
}

let last: { number: number; pool: Pool } | undefined;

/** The documents that a case is made from. The last pool is kept, for cases come in rows. */
export function poolOf(seed: number): Pool {
  const number = Math.floor(seed / CASES);
  if (last?.number !== number) last = { number, pool: drawPool(number) };
  return last.pool;
}
