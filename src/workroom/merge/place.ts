import type { Json, PathStep } from "../protocol/index.ts";
import { type FieldPath, ORDER } from "./field-change.ts";
import { isJsonObject, type JsonObject, ownValue } from "./json.ts";
import { JOB_SHAPE, keyOf, type ListShape, type Shape } from "./shape.ts";

/** The shape at a path of the job; undefined where the job has no such field. The order of a list has that of the list. */
export function shapeAt(path: FieldPath): Shape | undefined {
  return path.reduce<Shape | undefined>(shapeBelow, JOB_SHAPE);
}

function shapeBelow(shape: Shape | undefined, step: PathStep): Shape | undefined {
  if (shape?.kind === "group" && typeof step === "string") return shape.under(step);
  if (shape?.kind !== "list") return undefined;
  return typeof step === "string" ? (step === ORDER ? shape : undefined) : shape.item;
}

/** What stands one step below a value; undefined where nothing does. */
export function valueBelow(value: Json | undefined, shape: Shape, step: PathStep): Json | undefined {
  if (typeof step === "string") {
    if (shape.kind === "list") return Array.isArray(value) ? keysIn(shape, value) : undefined;
    return isJsonObject(value) ? ownValue(value, step) : undefined;
  }
  if (shape.kind !== "list" || !Array.isArray(value)) return undefined;
  return value.find((item) => keyOf(shape, item) === step.id);
}

/** The keys of a list in their order; those of items without one are left out. */
export function keysIn(list: ListShape, items: readonly Json[]): string[] {
  return items.flatMap((item) => keyOf(list, item) ?? []);
}

/** What stands at a path of a value of that shape. */
export function valueIn(value: Json | undefined, shape: Shape, path: FieldPath): Json | undefined {
  let [here, below]: [Json | undefined, Shape | undefined] = [value, shape];
  for (const step of path) {
    if (below === undefined) return undefined;
    here = valueBelow(here, below, step);
    below = shapeBelow(below, step);
  }
  return here;
}

/** The shortest part of a path at which something is missing that does not come into being with what lies in it. */
export function missingAbove(value: Json, shape: Shape, path: FieldPath): FieldPath | undefined {
  let [here, below]: [Json | undefined, Shape | undefined] = [value, shape];
  for (const [at, step] of path.entries()) {
    if (here === undefined && !comesWithContent(below, path[at - 1])) return path.slice(0, at);
    if (below === undefined) return undefined;
    here = valueBelow(here, below, step);
    below = shapeBelow(below, step);
  }
  return undefined;
}

/** Lists and loose groups are there as soon as something is in them; an item and a whole group are not. */
function comesWithContent(shape: Shape | undefined, lastStep: PathStep | undefined): boolean {
  if (typeof lastStep === "object") return false;
  return shape?.kind === "list" || (shape?.kind === "group" && shape.isLoose);
}

/**
 * The value with another at a path of it, taken away where that is undefined. Lists and groups on the way come into
 * being; a list keeps its order, and what is new in it comes last. What is not touched stays the same object.
 */
export function withValue(
  value: Json | undefined,
  shape: Shape,
  path: FieldPath,
  to: Json | undefined,
): Json | undefined {
  const [step, ...rest] = path;
  if (step === undefined) return to;
  const before = valueBelow(value, shape, step);
  const below = shapeBelow(shape, step);
  if (below === undefined) return value;
  if (step === ORDER && shape.kind === "list") return ordered(shape, value, to);
  const after = withValue(before, below, rest, to);
  if (after === before) return value;
  if (typeof step === "string") return withKey(isJsonObject(value) ? value : {}, step, after);
  const list = Array.isArray(value) ? (value as Json[]) : [];
  if (before === undefined) return after === undefined ? value : [...list, after];
  return list.flatMap((item) => (item === before ? (after === undefined ? [] : [after]) : [item]));
}

function withKey(group: JsonObject, key: string, value: Json | undefined): JsonObject {
  if (value !== undefined) return { ...group, [key]: value };
  const { [key]: _, ...rest } = group;
  return rest;
}

/** The list in another order; what that order does not name stays behind what it stood behind. */
function ordered(list: ListShape, value: Json | undefined, order: Json | undefined): Json | undefined {
  if (!Array.isArray(value) || !Array.isArray(order)) return value;
  const items = value as Json[];
  const rank = new Map((order as Json[]).map((key, at) => [key, at]));
  let last = -1;
  const ranks = items.map((item) => {
    last = rank.get(keyOf(list, item) ?? null) ?? last;
    return last;
  });
  // Sorting is stable: what shares a rank keeps its order, and what an order does not name comes after its leader.
  const places = items.map((_, at) => at);
  places.sort((a, b) => (ranks[a] ?? 0) - (ranks[b] ?? 0));
  return places.flatMap((at) => items[at] ?? []);
}
