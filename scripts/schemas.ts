import { buildGenerator, programFromConfig } from "typescript-json-schema";
import * as z from "zod";
import { jobSchema, partsFileSchema } from "../src/job/index.ts";

const text = (schema: object) => `${JSON.stringify(schema, null, 2)}\n`;

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
