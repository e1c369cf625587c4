import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { openJob, openJobText } from "./open-job.ts";

const DOCUMENT = readFileSync("test/documents/job-v1.json", "utf8");

type Key = string | number;

/** Every place in a document, the whole of it first. */
function placesIn(value: unknown, path: Key[] = []): Key[][] {
  if (typeof value !== "object" || value === null) return [path];
  const inner = Object.entries(value).flatMap(([key, one]) =>
    placesIn(one, [...path, Array.isArray(value) ? Number(key) : key]),
  );
  return [path, ...inner];
}

/** The document with something else at one place. */
function spoilt(path: readonly Key[], value: unknown): unknown {
  if (path.length === 0) return value;
  const copy = JSON.parse(DOCUMENT);
  const holder = path.slice(0, -1).reduce((inner, key) => inner[key], copy);
  holder[path.at(-1) ?? ""] = value;
  return copy;
}

const places = placesIn(JSON.parse(DOCUMENT));

/** What the issues name first, to see that it is the place that was spoilt, or what holds it. */
const named = (document: unknown) => {
  const opened = openJob(document);
  return opened.ok ? [] : opened.issues.map(({ field, wanted }) => `${field}: ${wanted}`);
};

// ECMA-262, 7.1.1 ToPrimitive: an object without `toString` and `valueOf` cannot be compared with a number.
test.each([
  ["as a text", { length: { toString: null, valueOf: null } }],
  ["in a list", [{ length: { toString: 1, valueOf: null } }]],
])(
  "a length that no number can be compared with, %s, is said to be wrong, wherever it stands",
  (_, value) => {
    for (const path of places.filter((one) => one.length > 0)) {
      const opened = openJobText(JSON.stringify(spoilt(path, value)));
      expect(opened.ok, path.join(".")).toBe(false);
    }
    expect(named(spoilt(["name"], { length: { toString: null, valueOf: null } }))[0]).toMatch(
      /^name: no field called "length"/,
    );
  },
);

test.each([
  ["a symbol", Symbol("a")],
  ["a big whole number", 1n],
  ["a function", () => 1],
  ["an object without a prototype", Object.assign(Object.create(null), { stranger: "" })],
  ["not a number", Number.NaN],
  [
    "an object whose text is an error",
    {
      toString: () => {
        throw new Error("no text");
      },
    },
  ],
])("%s handed over in code comes back as what to put right, wherever it stands", (_, value) => {
  for (const path of places) {
    const opened = openJob(spoilt(path, value));
    if (opened.ok) throw new Error(`opened with ${path.join(".")} spoilt`);
    for (const { field, given, wanted } of opened.issues) expect([field, given, wanted]).not.toContain("");
  }
});
