import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { openJob } from "../src/job/index.ts";
import { plan } from "../src/plan/index.ts";
import { anyJob } from "./any-job.ts";

const isPlan = new Ajv2020({ strictTuples: false }).compile(
  JSON.parse(readFileSync("schema/shadewright-plan-2.schema.json", "utf8")),
);

// A number that is none becomes null in JSON, and a reader that knows only the schema refuses it.
test("whatever job the published schema allows, its plan follows the published schema", () => {
  fc.assert(
    fc.property(anyJob(), (document) => {
      const opened = openJob(document);
      if (!opened.ok) throw new Error(JSON.stringify(opened.issues));
      isPlan(JSON.parse(JSON.stringify(plan(opened.job))));
      expect(isPlan.errors).toBeNull();
    }),
    { numRuns: 300 },
  );
});
