import * as z from "zod";
import { jobSchema } from "./job.ts";

/** What may stand behind a schema that is optional, nullable or has a default. */
function inside(schema: z.core.$ZodType): z.core.$ZodType {
  let inner = schema;
  while (
    inner instanceof z.ZodOptional ||
    inner instanceof z.ZodNullable ||
    inner instanceof z.ZodDefault ||
    inner instanceof z.ZodPrefault
  )
    inner = inner.def.innerType;
  return inner;
}

/** The schemas that a value one step down may follow: several under a union, none where there is no such field. */
function below(schema: z.core.$ZodType, key: string): z.core.$ZodType[] {
  const outer = inside(schema);
  if (outer instanceof z.ZodUnion) return outer.options.flatMap((option) => below(option, key));
  if (outer instanceof z.ZodObject) {
    const field: z.core.$ZodType | undefined = Object.hasOwn(outer.shape, key) ? outer.shape[key] : undefined;
    return field === undefined ? [] : [field];
  }
  if (outer instanceof z.ZodRecord)
    return z.safeParse(outer.def.keyType, key).success ? [z.optional(outer.def.valueType)] : [];
  if (outer instanceof z.ZodArray) return [outer.element];
  if (outer instanceof z.ZodTuple) {
    const item = outer.def.items[Number(key)];
    return item === undefined ? [] : [item];
  }
  return [];
}

/**
 * Whether the field of the job document at this place takes this value; undefined asks whether it may be left out.
 * `segments` are those of its JSON pointer.
 */
export function fieldAccepts(segments: readonly string[], value: unknown): boolean {
  const fields = segments.reduce<z.core.$ZodType[]>(
    (schemas, key) => schemas.flatMap((schema) => below(schema, key)),
    [jobSchema],
  );
  return fields.some((field) => z.safeParse(field, value).success);
}
