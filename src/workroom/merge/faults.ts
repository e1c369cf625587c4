import * as z from "zod";
import type { JobIssue } from "../../job/index.ts";
import type { FieldChange, Json } from "../protocol/index.ts";
import { type FieldPath, ORDER } from "./field-change.ts";
import { isJsonObject } from "./json.ts";
import { shapeAt } from "./place.ts";

/** What no state of a job would take: fields that jobs do not have, and values that these fields do not hold. */
export function faultsOf(changes: readonly FieldChange[]): JobIssue[] {
  return changes.flatMap((change) => faultOf(change) ?? []);
}

/** What tells a job, or an item of a list, from others: it is there once and for all. */
const FIXED = new Set(["format", "version", "id"]);

function faultOf({ path, to }: FieldChange): JobIssue | undefined {
  const issue = (wanted: string): JobIssue => ({ field: fieldOf(path), given: shown(to), wanted });
  const shape = shapeAt(path);
  const [last, above] = [path.at(-1), shapeAt(path.slice(0, -1))];
  if (shape === undefined || path.length === 0) return issue("a field that a job has");
  const isKey =
    (above?.kind === "group" && isKeyOfItem(path)) || (path.length === 1 && FIXED.has(String(last)));
  if (isKey) return issue("another field: by this one it is known, and it stays as it is");
  if (last === ORDER) {
    const isOrder = Array.isArray(to) && (to as Json[]).every((key) => typeof key === "string");
    return isOrder ? undefined : issue("the keys of the list in their order");
  }
  if (to === undefined) return shape.isOptional ? undefined : issue("a value; this field cannot be left out");
  if (typeof last === "object" && !isItemOf(path, to))
    return issue(`an item that is called ${shown(last.id)}`);
  const parsed = z.safeParse(shape.schema, to);
  return parsed.success ? undefined : issue(firstOf(parsed.error));
}

function isKeyOfItem(path: FieldPath): boolean {
  const [item, last] = path.slice(-2);
  if (typeof item !== "object" || typeof last !== "string") return false;
  const list = shapeAt(path.slice(0, -2));
  return list?.kind === "list" && list.keyField === last;
}

function isItemOf(path: FieldPath, item: Json): boolean {
  const [list, step] = [shapeAt(path.slice(0, -1)), path.at(-1)];
  if (list?.kind !== "list" || typeof step !== "object") return false;
  const key = list.keyField === undefined ? item : isJsonObject(item) ? item[list.keyField] : undefined;
  return key === step.id;
}

function firstOf(error: z.core.$ZodError): string {
  const [first] = error.issues;
  const where = first && first.path.length > 0 ? `${first.path.join(".")}: ` : "";
  return `${where}${first?.message ?? "another value"}`;
}

/** `rooms[room-1].windows[window-2].name`: items by their keys. */
export function fieldOf(path: FieldPath): string {
  const text = path.reduce<string>(
    (sofar, step) =>
      typeof step === "object" ? `${sofar}[${step.id}]` : sofar === "" ? step : `${sofar}.${step}`,
    "",
  );
  return text === "" ? "(job)" : text.slice(0, 200);
}

function shown(value: Json | undefined): string {
  return value === undefined ? "nothing" : JSON.stringify(value).slice(0, 60);
}
