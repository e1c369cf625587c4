import fc from "fast-check";
import { expect, test } from "vitest";
import { anyMaking } from "../../test/arbitrary-job.ts";
import { fieldAccepts } from "./field-accepts.ts";
import { jobSchema } from "./job.ts";
import { newJob, newWindow } from "./new-job.ts";

const MAKING = ["rooms", "0", "windows", "0", "shade", "making"];

/** A job with one setting made. */
function jobWith(group: string, key: string, value: unknown): unknown {
  const job = newJob({ id: "job", name: "Job", system: "metric" });
  const window = newWindow({ id: "window", name: "Window", widthMm: 900, heightMm: 1200 });
  const made = { ...window, shade: { ...window.shade, making: { [group]: { [key]: value } } } };
  return { ...job, rooms: [{ id: "room", name: "Room", windows: [made] }] };
}

test("a field takes what a whole job with it would pass the schema with, and nothing else", () => {
  const values = fc.oneof(
    fc.double({ min: -10, max: 70_000, noNaN: true }),
    fc.constantFrom<unknown>(0, 20, 20_000, 20_000.1, 60_000, Number.NaN, "none", "auto", true, null, [], {}),
  );
  fc.assert(
    fc.property(anyMaking, values, fc.nat(), (making, value, at) => {
      const fields = Object.entries(making).flatMap(([group, settings]) =>
        Object.keys(settings ?? {}).map((key) => [group, key] as const),
      );
      fc.pre(fields.length > 0);
      const [group, key] = fields[at % fields.length] ?? ["", ""];
      const whole = jobSchema.safeParse(jobWith(group, key, value)).success;
      expect(fieldAccepts([...MAKING, group, key], value), `${group}.${key} ${value}`).toBe(whole);
    }),
    { numRuns: 500 },
  );
});

test("what a job may be without may be left out; fields that it has not take nothing", () => {
  expect(fieldAccepts(["rooms", "0", "inLine"], undefined)).toBe(true);
  expect(fieldAccepts(["rooms", "0", "name"], undefined)).toBe(false);
  expect(fieldAccepts(["rooms", "0", "nickname"], "attic")).toBe(false);
  expect(fieldAccepts([...MAKING, "constructor"], {})).toBe(false);
});

test("a field of one of several shapes is found in the shape that has it", () => {
  expect(fieldAccepts(["rooms", "0", "inLine", "spacingMm"], 100)).toBe(true);
  expect(fieldAccepts(["rooms", "0", "inLine", "spacingMm"], 1)).toBe(false);
  expect(fieldAccepts(["rooms", "0", "windows", "0", "opening", "diagonalsMm", "1"], 1500)).toBe(true);
  expect(fieldAccepts(["rooms", "0", "windows", "0", "opening", "diagonalsMm", "2"], 1500)).toBe(false);
});

test("a price of any line of the shopping list may be set, and taken away", () => {
  expect(fieldAccepts(["rates", "prices", "cloth-plain-cotton"], 12.5)).toBe(true);
  expect(fieldAccepts(["rates", "prices", "cloth-plain-cotton"], undefined)).toBe(true);
  expect(fieldAccepts(["rates", "prices", "cloth-plain-cotton"], -1)).toBe(false);
  expect(fieldAccepts(["rates", "prices", "not a line"], 1)).toBe(false);
});
