import { readFileSync } from "node:fs";
import fc from "fast-check";
import { anyJob as anyDocument } from "../any-job.ts";
import { anyJob } from "../arbitrary-job.ts";
import { mutated } from "../hostile/mutated.ts";
import { workroomJob } from "../workroom-job.ts";

const DOCUMENT = readFileSync("test/documents/job-v1.json", "utf8");

/** Values that reach for what objects and numbers do behind one's back. */
const TRAPS = [
  '{"length":{"toString":null,"valueOf":null}}',
  '{"toString":1}',
  '{"__proto__":{"polluted":1}}',
  '{"constructor":{"prototype":null}}',
  "[[[[[[[[[[]]]]]]]]]]",
  "1e400",
  "-0",
  "5e-324",
  '"\\u0000"',
  '"\\ud800"',
];

/** Job files: allowed and extreme, a little wrong, and hostile to the last byte. */
export const TEXTS: Record<"valid" | "wrong" | "hostile", fc.Arbitrary<string>> = {
  valid: fc.oneof(anyJob, anyDocument(), workroomJob).map((job) => JSON.stringify(job)),
  wrong: fc.oneof(
    mutated(DOCUMENT),
    workroomJob.chain((job) => mutated(JSON.stringify(job))),
  ),
  hostile: fc.oneof(
    // Some value of a job is a trap.
    fc.tuple(fc.nat(), fc.constantFrom(...TRAPS)).map(([at, trap]) => {
      const values = [...DOCUMENT.matchAll(/: (?:"[^"]*"|[\d.]+|true|null)/g)];
      const value = values[at % values.length];
      if (value === undefined) throw new Error("invalid test: a document without values");
      const end = value.index + value[0].length;
      return `${DOCUMENT.slice(0, value.index)}: ${trap}${DOCUMENT.slice(end)}`;
    }),
    // Characters lost, doubled or put in.
    fc
      .array(fc.tuple(fc.nat(), fc.nat({ max: 3 }), fc.string({ maxLength: 3 })), {
        minLength: 1,
        maxLength: 4,
      })
      .map((edits) =>
        edits.reduce((text, [at, lost, put]) => {
          const from = at % (text.length + 1);
          return text.slice(0, from) + put + text.slice(from + lost);
        }, DOCUMENT),
      ),
    fc.json(),
  ),
};
