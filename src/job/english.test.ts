import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { jobWith } from "../../test/job-with.ts";
import { englishOf, spellerOf } from "./english.ts";
import { PLACES } from "./job.ts";

const US = { place: "us", units: { system: "imperial", ruler: "1/8 in" } } as const;

test("inches in the United States are read in American English, all else in British", () => {
  for (const place of PLACES) {
    expect(englishOf({ ...US, place }).spelling).toBe(place === "us" ? "american" : "british");
    expect(englishOf({ place, units: { system: "metric", ruler: "1 mm" } }).spelling).toBe("british");
  }
  expect(englishOf({ units: US.units }).spelling).toBe("british");
});

test("every free text of a job counts as the maker's own", () => {
  // From the published schema: texts that are no id, no day, no kind and no picture.
  const fields = new Set<string>();
  const walk = (node: unknown): void => {
    if (typeof node !== "object" || node === null) return;
    for (const [key, value] of Object.entries(node)) {
      if (key === "properties") {
        for (const [name, schema] of Object.entries(value as Record<string, { [of: string]: unknown }>))
          if (schema.type === "string" && /p\{Cc\}/.test(String(schema.pattern))) fields.add(name);
      }
      walk(value);
    }
  };
  walk(JSON.parse(readFileSync("schema/shadewright-job-1.schema.json", "utf8")));
  expect(fields.size).toBeGreaterThan(5);
  for (const field of fields) {
    const part = { [field]: "A grey cloth" } as object;
    expect(englishOf({ ...US, rooms: [part] } as never).ownTexts, field).toEqual(["A grey cloth"]);
  }
});

test("names and lines of notes stay, in whatever text they stand", () => {
  const job = jobWith({ name: "Grey room" }, { ...US, note: "One line\nThe cloth of Centre Street" });
  const spell = spellerOf(englishOf(job));
  expect(spell("Grey room: grey cloth in the centre")).toBe("Grey room: gray fabric in the center");
  expect(spell("The cloth of Centre\n  Street, cloth")).toBe("The cloth of Centre\n  Street, fabric");
  const renamed = { ...job, name: "Another" };
  expect(englishOf(renamed)).toBe(englishOf(job));
});
