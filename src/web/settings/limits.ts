import type { FieldSpec } from "../inputs/spec.ts";

interface Shaped {
  shape: Readonly<Record<string, unknown>>;
}

interface Limited {
  minValue: number | null;
  maxValue: number | null;
}

/** Fields with the limits that the schema sets, so that whatever a field accepts the job may hold. */
export function withLimits<F extends Readonly<Record<string, FieldSpec>>>(schema: Shaped, fields: F): F {
  const limited = Object.entries<FieldSpec>(fields).map(([name, spec]) => [
    name,
    limitedSpec(spec, bare(schema.shape[name])),
  ]);
  return Object.fromEntries(limited) as F;
}

function limitedSpec(spec: FieldSpec, schema: unknown): FieldSpec {
  if (spec.kind !== "length" && spec.kind !== "number") return spec;
  if (!hasLimits(schema)) throw new Error(`invalid field: ${spec.label} is no number in the schema`);
  const { minValue, maxValue } = schema;
  const min = minValue ?? Number.NEGATIVE_INFINITY;
  const max = maxValue ?? Number.POSITIVE_INFINITY;
  return spec.kind === "length" ? { ...spec, minMm: min, maxMm: max } : { ...spec, min, max };
}

function hasLimits(schema: unknown): schema is Limited {
  return typeof schema === "object" && schema !== null && "minValue" in schema && "maxValue" in schema;
}

/** What stands behind “optional” and “default”. */
function bare(schema: unknown): unknown {
  let inner = schema;
  while (typeof inner === "object" && inner !== null && "unwrap" in inner) {
    inner = (inner as { unwrap(): unknown }).unwrap();
  }
  return inner;
}
