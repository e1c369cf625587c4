import { readFileSync } from "node:fs";
import fc from "fast-check";
import type { JobInput } from "../src/job/index.ts";

/** As much of JSON Schema as the job's uses. */
interface Schema {
  type?: string;
  const?: unknown;
  enum?: unknown[];
  anyOf?: Schema[];
  properties?: Record<string, Schema>;
  required?: string[];
  items?: Schema;
  prefixItems?: Schema[];
  minItems?: number;
  maxItems?: number;
  minimum?: number;
  maximum?: number;
  pattern?: string;
  maxLength?: number;
  $ref?: string;
  /** A record: which keys, and what each holds. */
  propertyNames?: Schema;
  additionalProperties?: Schema | false;
}

/** Few ids, the catalogue's among them, so that what is asked for is often there. */
const IDS = [
  "a",
  "b",
  "c",
  "plain-cotton",
  "cotton-lining",
  "lock-6-slot",
  "lock-4-slot",
  "cord-0-9",
  "rib-rod-4",
];
const MOST_ITEMS = 3;

/**
 * Any document that the published schema allows, every field of it, limits included.
 * It comes from the schema file, so that a new field is tried without a word here.
 */
export function anyJob(): fc.Arbitrary<JobInput> {
  const schema = JSON.parse(readFileSync("schema/shadewright-job-1.schema.json", "utf8")) as Schema;
  return anyOf(schema).map((document) => withOwnIds(document as JobInput));
}

function anyOf(schema: Schema): fc.Arbitrary<unknown> {
  if (schema.const !== undefined) return fc.constant(schema.const);
  if (schema.enum) return fc.constantFrom(...schema.enum);
  if (schema.anyOf) return fc.oneof(...schema.anyOf.map(anyOf));
  switch (schema.type) {
    case "object":
      return anyObject(schema);
    case "array":
      return anyArray(schema);
    case "string":
      return anyString(schema);
    case "number":
      return anyNumber(schema);
    case "integer":
      return fc.integer({ min: schema.minimum ?? 0, max: schema.maximum ?? 100 });
    case "boolean":
      return fc.boolean();
    case "null":
      return fc.constant(null);
    default:
      throw new Error(`invalid schema for a generator: ${JSON.stringify(schema).slice(0, 200)}`);
  }
}

function anyObject({ properties = {}, required = [], propertyNames, additionalProperties }: Schema) {
  if (propertyNames && additionalProperties) {
    return fc.dictionary(anyOf(propertyNames) as fc.Arbitrary<string>, anyOf(additionalProperties), {
      maxKeys: MOST_ITEMS,
    });
  }
  const fields = Object.fromEntries(Object.entries(properties).map(([key, inner]) => [key, anyOf(inner)]));
  return fc.record(fields, { requiredKeys: required });
}

function anyArray({
  items,
  prefixItems,
  minItems = 0,
  maxItems = MOST_ITEMS,
}: Schema): fc.Arbitrary<unknown> {
  if (prefixItems) return fc.tuple(...prefixItems.map(anyOf));
  if (!items) throw new Error("invalid schema for a generator: a list of nothing");
  return fc.array(anyOf(items), { minLength: minItems, maxLength: Math.min(maxItems, MOST_ITEMS) });
}

function anyString({ pattern, maxLength }: Schema): fc.Arbitrary<unknown> {
  if (pattern?.includes("{0,63}")) return fc.constantFrom(...IDS);
  if (pattern?.includes("-02-29")) return fc.constantFrom("2026-05-31", "2024-02-29");
  if (pattern?.startsWith("^data:image")) return fc.constantFrom("data:image/png;base64,AA==");
  if (pattern?.includes("{6144}")) return fc.constantFrom("d9c7a3".repeat(1024), "000000".repeat(1024));
  if (pattern?.startsWith("^#")) return fc.constantFrom("#d9c7a3", "#000000", "#FFFFFF");
  if (pattern?.includes("A-Z")) return fc.constantFrom("USD", "EUR", "JPY");
  const hostile = fc.constantFrom(
    "<script>alert(1)</script>",
    "=1+1",
    "%PDF-1.7",
    "</svg>",
    "a\u202eb",
    "0\nSECTION",
  );
  const text = fc.oneof(fc.string({ minLength: 1, maxLength: 30, unit: "grapheme" }), hostile);
  return text
    .map((value) => value.replace(/\p{Cc}/gu, " ").slice(0, maxLength))
    .filter((value) => value !== "" && !/\p{Cs}/u.test(value));
}

/** Limits are as likely as what lies between: that is where formulas break. */
function anyNumber({ minimum = 0, maximum = 1000 }: Schema): fc.Arbitrary<unknown> {
  const between = fc.double({ min: minimum, max: maximum, noNaN: true });
  const usual = fc.double({ min: minimum, max: Math.min(maximum, Math.max(minimum, 2500)), noNaN: true });
  return fc.oneof(fc.constantFrom(minimum, maximum), usual, usual, between);
}

/** The schema cannot say that ids differ from each other; a job's must. */
export function withOwnIds(job: JobInput): JobInput {
  const own = <T extends { id: string }>(list: T[]): T[] =>
    list.map((item, n) =>
      list.findIndex(({ id }) => id === item.id) < n ? { ...item, id: `${item.id}-${n}` } : item,
    );
  const windows = own(job.rooms.flatMap((room) => room.windows));
  const rooms = own(job.rooms).map((room) => ({ ...room, windows: windows.splice(0, room.windows.length) }));
  const hardware = Object.fromEntries(
    Object.entries(job.hardware ?? {}).map(([kind, parts]) => [kind, own((parts ?? []) as { id: string }[])]),
  );
  return { ...job, rooms, cloths: own(job.cloths ?? []), hardware: hardware as JobInput["hardware"] };
}
