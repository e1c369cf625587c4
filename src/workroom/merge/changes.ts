import type { Job } from "../../job/index.ts";
import type { FieldChange, Json } from "../protocol/index.ts";
import { type FieldPath, ORDER, pathKey } from "./field-change.ts";
import { isJsonObject, keysOf, sameJson } from "./json.ts";
import { missingAbove, shapeAt, valueIn, withValue } from "./place.ts";
import { byKey, JOB_SHAPE, type ListShape, type Shape } from "./shape.ts";

/** What makes one state of a job out of another, field by field. */
export function changesBetween(before: Job, after: Job): FieldChange[] {
  return between(asJson(before), asJson(after), JOB_SHAPE, []);
}

/** A job is JSON, whose type does not say so. */
export function asJson(job: Job): Json {
  return job as unknown as Json;
}

function between(
  before: Json | undefined,
  after: Json | undefined,
  shape: Shape,
  path: FieldPath,
): FieldChange[] {
  if (before === after) return [];
  if (before === undefined || after === undefined) return [changeOf(path, before, after)];
  if (shape.kind === "group" && isJsonObject(before) && isJsonObject(after)) {
    const keys = new Set([...keysOf(before), ...keysOf(after)]);
    return [...keys].flatMap((key) => {
      const below = shape.under(key);
      return below === undefined ? [] : between(before[key], after[key], below, [...path, key]);
    });
  }
  if (shape.kind === "list" && Array.isArray(before) && Array.isArray(after)) {
    const byItem = betweenItems(shape, before as Json[], after as Json[], path);
    if (byItem) return byItem;
  }
  return sameJson(before, after) ? [] : [changeOf(path, before, after)];
}

/** Item by item; undefined where the items of one of the lists cannot be told apart. */
function betweenItems(
  list: ListShape,
  before: readonly Json[],
  after: readonly Json[],
  path: FieldPath,
): FieldChange[] | undefined {
  const [had, has] = [byKey(list, before), byKey(list, after)];
  if (had === undefined || has === undefined) return undefined;
  const keys = new Set([...had.keys(), ...has.keys()]);
  const changes = [...keys].flatMap((id) => between(had.get(id), has.get(id), list.item, [...path, { id }]));
  const [kept, wanted] = [[...had.keys()], [...has.keys()]];
  const reached = [...kept.filter((id) => has.has(id)), ...wanted.filter((id) => !had.has(id))];
  const order = sameJson(reached, wanted) ? [] : [{ path: [...path, ORDER], from: kept, to: wanted }];
  return [...changes, ...order];
}

export function changeOf(path: FieldPath, from: Json | undefined, to: Json | undefined): FieldChange {
  return { path: [...path], ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to }) };
}

/** What a job holds at a path; undefined where nothing is. */
export function valueAtPath(job: Job, path: FieldPath): Json | undefined {
  return valueIn(asJson(job), JOB_SHAPE, path);
}

/**
 * The job with changes done to it that were made from this very state, as a server numbers them.
 * @throws where they were not: a field is not there or holds something else
 */
export function applyChanges(job: Job, changes: readonly FieldChange[]): Job {
  const after = changes.reduce((document, { path, from, to }) => {
    const here = valueIn(document, JOB_SHAPE, path);
    const fits = shapeAt(path) !== undefined && missingAbove(document, JOB_SHAPE, path) === undefined;
    // The order of a list was told before items came and went.
    if (!fits || (path.at(-1) !== ORDER && !sameJson(here, from))) {
      throw new Error(`invalid changes for this state of the job: ${pathKey(path)}`);
    }
    return withValue(document, JOB_SHAPE, path, to) ?? document;
  }, asJson(job));
  return after as unknown as Job;
}
