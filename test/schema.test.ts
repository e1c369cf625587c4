import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { cuttingSchemaText, jobSchemaText, partsSchemaText, planSchemaText } from "../scripts/schemas.ts";
import { newJob, newWindow } from "../src/job/index.ts";
import { plan, planAndCut } from "../src/plan/index.ts";

// Ajv is the independent reader: it knows nothing of zod or of our types.
const jobFile = readFileSync("schema/shadewright-job-1.schema.json", "utf8");
const planFile = readFileSync("schema/shadewright-plan-2.schema.json", "utf8");
const isJob = new Ajv2020({ strict: true, strictTuples: false }).compile(JSON.parse(jobFile));
const isPlan = new Ajv2020({ strict: true, allowUnionTypes: true, strictTuples: false }).compile(
  JSON.parse(planFile),
);

function smallJob() {
  const window = newWindow({ id: "w", name: "East", widthMm: 900, heightMm: 1500, mount: "outside" });
  const job = newJob({ id: "j", name: "Job", system: "metric", place: "gb", purpose: "gift" });
  return { ...job, rooms: [{ id: "r", name: "Room", windows: [window] }] };
}

describe("published schemas", () => {
  test("the job's is up to date (`npm run schema` writes it)", () => {
    expect(jobFile).toBe(jobSchemaText());
  });

  test("that of a parts file is up to date, and takes a part that is half known", () => {
    const text = readFileSync("schema/shadewright-parts-1.schema.json", "utf8");
    expect(text).toBe(partsSchemaText());
    const isParts = new Ajv2020({ strict: true, strictTuples: false }).compile(JSON.parse(text));
    const file = { format: "shadewright-parts", version: 1, locks: [{ id: "l", name: "L", slots: 4 }] };
    expect(isParts(file)).toBe(true);
    expect(isParts({ ...file, locks: [{ id: "l", name: "L", slots: "four" }] })).toBe(false);
  });

  test("the plan's is up to date (`npm run schema` writes it)", () => {
    expect(planFile).toBe(planSchemaText());
  });

  test("a job that the program writes follows it", () => {
    isJob(JSON.parse(JSON.stringify(smallJob())));
    expect(isJob.errors).toBeNull();
  });

  test("width and length are enough of a window", () => {
    const windows = [{ id: "w", name: "East", opening: { widthsMm: [900], heightsMm: [1500] } }];
    isJob({
      format: "shadewright-job",
      version: 1,
      id: "j",
      name: "Job",
      rooms: [{ id: "r", name: "R", windows }],
    });
    expect(isJob.errors).toBeNull();
  });

  test.each([
    ["another version", { version: 2 }],
    ["an unknown field", { colour: "blue" }],
    ["a length in words", { workshop: { fold: { stackMm: "8 in" } } }],
  ])("a job with %s does not", (_what, change) => {
    expect(isJob({ ...smallJob(), ...change })).toBe(false);
  });

  test("that of a cutting plan is up to date, and a cutting plan follows it", () => {
    const text = readFileSync("schema/shadewright-cutting-1.schema.json", "utf8");
    expect(text).toBe(cuttingSchemaText());
    const isCutting = new Ajv2020({ strict: true, allowUnionTypes: true, strictTuples: false }).compile(
      JSON.parse(text),
    );
    const cutting = JSON.parse(JSON.stringify(planAndCut(smallJob()).cutting));
    isCutting(cutting);
    expect(isCutting.errors).toBeNull();
    expect(isCutting({ ...cutting, cloths: "none" })).toBe(false);
  });

  test("all are of one draft", () => {
    const drafts = readdirSync("schema").map(
      (file) => JSON.parse(readFileSync(`schema/${file}`, "utf8")).$schema,
    );
    expect(new Set(drafts).size).toBe(1);
  });

  test("a plan follows its own", () => {
    isPlan(JSON.parse(JSON.stringify(plan(smallJob()))));
    expect(isPlan.errors).toBeNull();
  });

  test.each([
    ["without its shades", { shades: undefined }],
    ["with a field too many", { colour: "blue" }],
    ["with a figure that is no number", { cost: { ...plan(smallJob()).cost, total: Number.NaN } }],
  ])("a plan %s does not", (_what, change) => {
    expect(isPlan(JSON.parse(JSON.stringify({ ...plan(smallJob()), ...change })))).toBe(false);
  });
});
