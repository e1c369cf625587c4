import * as z from "zod";
import { jobSchema } from "../../job/index.ts";
import type { Json } from "../protocol/index.ts";
import { isJsonObject, ownValue } from "./json.ts";

/**
 * How two people's edits of a part of the job meet, read off the job's schema:
 * - a field is one value: who wrote last has it
 * - a group is edited field by field; one without needed fields is there as long as one of them is (`isLoose`), another
 *   comes and goes as a whole
 * - a list is edited item by item, each by its key
 */
export type Shape = FieldShape | GroupShape | ListShape;

interface ShapeBase {
  /** What a value there must follow. */
  schema: z.core.$ZodType;
  /** It may be left out. */
  isOptional: boolean;
}
interface FieldShape extends ShapeBase {
  kind: "field";
}
export interface GroupShape extends ShapeBase {
  kind: "group";
  isLoose: boolean;
  /** The shape under a key; undefined where there is no such field. */
  under(key: string): Shape | undefined;
}
export interface ListShape extends ShapeBase {
  kind: "list";
  item: Shape;
  /** The field by which items are told apart; undefined where they are texts, each its own key. */
  keyField: string | undefined;
}

/** Lists whose items are told apart by another field than `id`. */
const KEY_FIELDS: Readonly<Record<string, string>> = {
  laidPieces: "piece",
  cutCloth: "cloth",
  pieces: "piece",
  bolts: "bolt",
};

/** The key of an item; undefined where it has none. */
export function keyOf({ keyField }: ListShape, item: Json): string | undefined {
  const key = keyField === undefined ? item : isJsonObject(item) ? ownValue(item, keyField) : undefined;
  return typeof key === "string" ? key : undefined;
}

/** The items of a list by their keys, in order; undefined where two have one key, or one has none. */
export function byKey(list: ListShape, items: readonly Json[]): Map<string, Json> | undefined {
  const found = new Map<string, Json>();
  for (const item of items) {
    const key = keyOf(list, item);
    if (key === undefined || found.has(key)) return undefined;
    found.set(key, item);
  }
  return found;
}

function shapeOf(schema: z.core.$ZodType, name: string): Shape {
  const { inner, isOptional } = unwrapped(schema);
  const base = { schema, isOptional };
  if (inner instanceof z.ZodObject) return groupOf(base, inner.shape);
  if (inner instanceof z.ZodRecord) {
    const value = shapeOf(inner.valueType, "");
    return { ...base, kind: "group", isLoose: true, under: () => ({ ...value, isOptional: true }) };
  }
  if (inner instanceof z.ZodArray) {
    const { inner: element } = unwrapped(inner.element);
    if (element instanceof z.ZodString) return listOf(base, inner.element, undefined);
    const key = element instanceof z.ZodObject && "id" in element.shape ? "id" : KEY_FIELDS[name];
    if (key !== undefined) return listOf(base, inner.element, key);
  }
  return { ...base, kind: "field" };
}

function groupOf(base: ShapeBase, fields: Readonly<Record<string, z.core.$ZodType>>): GroupShape {
  const shapes = new Map<string, Shape>();
  const under = (key: string) => {
    const schema = Object.hasOwn(fields, key) ? fields[key] : undefined;
    const known = shapes.get(key) ?? (schema && shapeOf(schema, key));
    if (known) shapes.set(key, known);
    return known;
  };
  const isLoose = Object.keys(fields).every((key) => under(key)?.isOptional);
  return { ...base, kind: "group", isLoose, under };
}

function listOf(base: ShapeBase, item: z.core.$ZodType, keyField: string | undefined): ListShape {
  return { ...base, kind: "list", item: { ...shapeOf(item, ""), isOptional: true }, keyField };
}

function unwrapped(schema: z.core.$ZodType): { inner: z.core.$ZodType; isOptional: boolean } {
  let inner = schema;
  let isOptional = false;
  while (true) {
    if (inner instanceof z.ZodOptional) isOptional = true;
    else if (
      !(inner instanceof z.ZodNullable || inner instanceof z.ZodDefault || inner instanceof z.ZodPrefault)
    ) {
      return { inner, isOptional };
    }
    inner = inner.def.innerType;
  }
}

export const JOB_SHAPE: Shape = shapeOf(jobSchema, "");
