import { buildGenerator, programFromConfig } from "typescript-json-schema";
import * as z from "zod";
import { jobSchema, partsFileSchema } from "../src/job/index.ts";
import { SCHEMA_WORDS } from "./schema-words.ts";

const text = (schema: object) => `${JSON.stringify(described(schema, "document"), null, 2)}\n`;

type Node = Record<string, unknown>;

/** Keys under which a schema holds others by name. */
const NAMED = ["properties", "$defs"];

/** The schema with a description of every property: its own, or that of `SCHEMA_WORDS`. */
function described(value: unknown, owner: string): unknown {
  if (Array.isArray(value)) return value.map((one) => described(one, owner));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, inner]) => {
      if (!NAMED.includes(key)) return [key, described(inner, owner)];
      const children = Object.entries(inner as Node).map(([name, child]) => {
        const full = described(child, name) as Node;
        return [name, key === "properties" ? withWords(full, name, owner) : full];
      });
      return [key, Object.fromEntries(children)];
    }),
  );
}

function withWords(schema: Node, name: string, owner: string): Node {
  if (schema.description !== undefined) return schema;
  const description = SCHEMA_WORDS[`${owner}.${name}`] ?? SCHEMA_WORDS[name];
  if (description === undefined)
    throw new Error(`no description of ${owner}.${name}: say in schema-words.ts`);
  return { description, ...schema };
}

/** JSON Schema of a job as it is written: what has a default may be left out. */
export function jobSchemaText(): string {
  return text({ $id: "shadewright-job-1.schema.json", ...z.toJSONSchema(jobSchema, { io: "input" }) });
}

/** JSON Schema of a parts file. */
export function partsSchemaText(): string {
  return text({
    $id: "shadewright-parts-1.schema.json",
    ...z.toJSONSchema(partsFileSchema, { io: "input" }),
  });
}

/** The draft of all of them: what zod writes. */
const DRAFT = "https://json-schema.org/draft/2020-12/schema";

/** JSON Schema of the plan, read from its types, so that the two cannot differ. */
export function planSchemaText(): string {
  return typesSchemaText("src/plan/plan-types.ts", "Plan", {
    $id: "shadewright-plan-2.schema.json",
    title: "Shadewright plan",
  });
}

/** The same of a cutting plan. */
export function cuttingSchemaText(): string {
  return typesSchemaText("src/plan/cutting/cutting-plan.ts", "CuttingPlan", {
    $id: "shadewright-cutting-1.schema.json",
    title: "Shadewright cutting plan",
  });
}

function typesSchemaText(
  file: string,
  symbol: string,
  { $id, title }: { $id: string; title: string },
): string {
  const program = programFromConfig("tsconfig.core.json", [file]);
  const generator = buildGenerator(program, { required: true, noExtraProps: true, ignoreErrors: true });
  const schema = generator?.getSchemaForSymbol(symbol);
  if (!schema) throw new Error(`invalid types: no schema could be read of ${symbol}`);
  const { $schema: _older, definitions, ...plan } = schema;
  // Sources are added with every release: a reader of plans must not stumble over a new one.
  const open = { SourceId: { type: "string", description: "Name of a source, as in the list of sources" } };
  return text({ $id, $schema: DRAFT, title, ...tidied(plan, { ...definitions, ...open }) });
}

type Definitions = Record<string, unknown>;
const REF = "#/definitions/";
/** Where the newer draft keeps them. */
const DEFS = "#/$defs/";

/**
 * The generator names a definition by the file of its type, or by its whole text where it has no name.
 * Here the name of the type is enough, and what has none stands where it is used. It writes an older draft: what the
 * newer one calls otherwise is named anew.
 */
function tidied(schema: object, definitions: Definitions): object {
  const kept: Definitions = {};
  const shortName = (key: string) => /^(?:import\(.*\)\.)?(\w+)$/.exec(key)?.[1];
  const tidy = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(tidy);
    if (typeof value !== "object" || value === null) return value;
    const { $ref, ...rest } = value as { $ref?: string };
    const others = Object.entries(rest).map(([key, inner]) => [
      // Types one after the other, not one for all.
      key === "items" && Array.isArray(inner) ? "prefixItems" : key,
      tidy(inner),
    ]);
    if ($ref === undefined) return Object.fromEntries(others);
    const key = decodeURIComponent($ref.slice(REF.length));
    const name = shortName(key);
    if (name === undefined) return { ...(tidy(definitions[key]) as object), ...Object.fromEntries(others) };
    return { $ref: DEFS + name, ...Object.fromEntries(others) };
  };
  for (const [key, definition] of Object.entries(definitions)) {
    const name = shortName(key);
    if (name === undefined) continue;
    if (Object.hasOwn(kept, name)) throw new Error(`invalid plan types: two are called ${name}`);
    kept[name] = tidy(definition);
  }
  return { ...(tidy(schema) as object), $defs: kept };
}
