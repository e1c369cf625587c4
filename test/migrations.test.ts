import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { JOB_VERSION, openJobText } from "../src/job/index.ts";
import { MIGRATIONS } from "../src/job/migrations.ts";

const versions = Array.from({ length: JOB_VERSION }, (_, n) => n + 1);
const older = versions.slice(0, -1);
const fileOf = (version: number) => `test/documents/job-v${version}.json`;

/** `rooms.windows.opening.widthsMm`: fields of a document by their path, places in lists left out. */
function pathsOf(value: unknown, path = ""): string[] {
  if (Array.isArray(value)) return value.flatMap((item) => pathsOf(item, path));
  if (typeof value !== "object" || value === null) return [path];
  // An object may be a list by name, whose names no schema knows: it counts by its own path too.
  const within = Object.entries(value).flatMap(([key, inner]) =>
    pathsOf(inner, path === "" ? key : `${path}.${key}`),
  );
  return [path, ...within];
}

interface Schema {
  properties?: Record<string, Schema>;
  items?: Schema | false;
  anyOf?: Schema[];
  /** A record, whose keys are fields of another object. */
  propertyNames?: Schema;
}

function schemaPaths({ properties, items, anyOf, propertyNames }: Schema, path = ""): string[] {
  if (propertyNames) return [`${path}.`];
  if (properties) {
    return Object.entries(properties).flatMap(([key, inner]) =>
      schemaPaths(inner, path === "" ? key : `${path}.${key}`),
    );
  }
  if (items) return schemaPaths(items, path);
  return anyOf?.some((choice) => choice.properties)
    ? anyOf.flatMap((inner) => schemaPaths(inner, path))
    : [path];
}

describe("documents of every version", () => {
  test.each(versions)("version %i: one is kept, opens, and is of that version", (version) => {
    const text = readFileSync(fileOf(version), "utf8");
    expect(JSON.parse(text).version).toBe(version);
    const opened = openJobText(text);
    expect(opened.ok ? [] : opened.issues).toEqual([]);
    expect(opened.ok && opened.job.version).toBe(JOB_VERSION);
    expect(opened.ok && opened.migratedFrom).toBe(version === JOB_VERSION ? undefined : version);
  });

  test("a document of version 1 from before lifts had kinds opens, and nothing that it says changes", () => {
    const document = JSON.parse(readFileSync("test/documents/job-v1-before-lift-kinds.json", "utf8"));
    const opened = openJobText(JSON.stringify(document));
    expect(opened.ok ? [] : opened.issues).toEqual([]);
    expect(opened.ok && opened.job).toMatchObject(document);
    expect(opened.ok && opened.job.rooms[0]?.windows[0]?.shade.making?.lift?.kind).toBeUndefined();
  });

  test("each older version has its step, and no step is for a version that never was", () => {
    expect(Object.keys(MIGRATIONS).map(Number)).toEqual(older);
    expect(existsSync(fileOf(JOB_VERSION + 1))).toBe(false);
  });

  test("opening a document of the present version changes nothing that it says", () => {
    const document = JSON.parse(readFileSync(fileOf(JOB_VERSION), "utf8"));
    const opened = openJobText(JSON.stringify(document));
    // Defaults may be added beside what was written; nothing of it may go or change.
    expect(opened.ok && opened.job).toMatchObject(document);
  });

  // The document would otherwise age quietly: a field that it lacks could be renamed without a step.
  test("the newest document has every field of the schema", () => {
    const schema = JSON.parse(readFileSync(`schema/shadewright-job-${JOB_VERSION}.schema.json`, "utf8"));
    const present = new Set(pathsOf(JSON.parse(readFileSync(fileOf(JOB_VERSION), "utf8"))));
    // `workshop` is the same schema as a shade's `making`, which is filled in.
    const wanted = schemaPaths(schema).filter((path) => !path.startsWith("workshop."));
    const isThere = (path: string) =>
      path.endsWith(".") ? [...present].some((one) => one.startsWith(path)) : present.has(path);
    expect(wanted.length).toBeGreaterThan(100);
    expect(wanted.filter((path) => !isThere(path))).toEqual([]);
  });
});
