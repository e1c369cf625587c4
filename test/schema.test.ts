import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, test } from "vitest";
import { SCHEMA_WORDS } from "../scripts/schema-words.ts";
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

describe("every property of every schema is described", () => {
  type Node = Record<string, unknown>;
  const UNITS: readonly (readonly [RegExp, RegExp])[] = [
    [/Mm$/, /\bmm\b/],
    [/Kg$/, /\bkg\b/],
    [/[a-z]N$/, /\bN\b/],
    [/(?:Rad)$/, /\brad/],
    [/Deg$/, /degrees/],
    [/Nm$/, /N·m/],
  ];

  function properties(value: unknown, owner: string): [path: string, name: string, schema: Node][] {
    if (Array.isArray(value)) return value.flatMap((one) => properties(one, owner));
    if (typeof value !== "object" || value === null) return [];
    return Object.entries(value).flatMap(([key, inner]) => {
      if (key !== "properties") return properties(inner, key === "$defs" ? "" : owner);
      return Object.entries(inner as Node).flatMap(([name, schema]) => [
        [`${owner}.${name}`, name, schema as Node] as [string, string, Node],
        ...properties(schema, `${owner}.${name}`),
      ]);
    });
  }

  test.each(readdirSync("schema"))("%s", (file) => {
    const all = properties(JSON.parse(readFileSync(`schema/${file}`, "utf8")), "");
    expect(all.length).toBeGreaterThan(50);
    const silent = all.filter(([, , { description }]) => String(description ?? "").trim().length < 3);
    expect(silent.map(([path]) => path)).toEqual([]);
  });

  // What says its unit in its name says it in words too, where the description is ours alone.
  test("words of our own say the unit of the name", () => {
    const wrong = Object.entries(SCHEMA_WORDS).flatMap(([key, words]) =>
      UNITS.filter(([name, unit]) => name.test(key) && !unit.test(words)).map(() => `${key}: ${words}`),
    );
    expect(wrong).toEqual([]);
  });

  test("none of them is left over", () => {
    const used = new Set(
      readdirSync("schema").flatMap((file) =>
        properties(JSON.parse(readFileSync(`schema/${file}`, "utf8")), "").map(
          ([, , schema]) => schema.description,
        ),
      ),
    );
    expect(Object.entries(SCHEMA_WORDS).filter(([, words]) => !used.has(words))).toEqual([]);
  });
});
