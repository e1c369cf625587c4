import fc from "fast-check";
import { expect, test } from "vitest";
import { openJobText } from "../src/job/index.ts";
import { anyJob } from "./any-job.ts";

test("what the published schema allows, the importer opens", () => {
  fc.assert(
    fc.property(anyJob(), (job) => {
      const opened = openJobText(JSON.stringify(job));
      expect(opened.ok ? [] : opened.issues).toEqual([]);
    }),
    { numRuns: 200 },
  );
});
