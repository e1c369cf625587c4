import type { Job } from "../../src/job/index.ts";
import type { FieldPath } from "../../src/workroom/merge/index.ts";

/**
 * All single values of a job by where they stand, items of lists by their ids: another way of looking at a job than that
 * of the merge, which tests judge it by. Lists whose items have no ids are single values; the order of lists is not told.
 */
export function leavesOf(job: Job): Map<string, string> {
  const leaves = new Map<string, string>();
  walk(JSON.parse(JSON.stringify(job)), "", leaves);
  return leaves;
}

/** The single values of one part of a job by where they stand, as the leaves of the whole job are called. */
export function leavesAt(path: FieldPath, value: unknown): Map<string, string> {
  const leaves = new Map<string, string>();
  if (value !== undefined) walk(value, leafPathOf(path), leaves);
  return leaves;
}

/** Where a path of a change or conflict leads, as the leaves are called. */
export function leafPathOf(path: FieldPath): string {
  return path.map((step) => `/${typeof step === "object" ? step.id : step}`).join("");
}

/** Where a list stands in which two items have one id: a job may hold such, and no edit can tell the two apart. */
export function listsOfTwins(leaves: ReadonlyMap<string, string>): string[] {
  return [...leaves].flatMap(([path, value]) => {
    const list: unknown = JSON.parse(value);
    const isTwins = Array.isArray(list) && list.length > 0 && list.every(keyOf) && !isWhole(path);
    return isTwins ? [path] : [];
  });
}

const KEYS = ["id", "piece", "cloth"];

function walk(value: unknown, path: string, leaves: Map<string, string>): void {
  if (Array.isArray(value)) {
    const keys = value.map(keyOf);
    const known = keys.filter((key) => key !== undefined);
    if (known.length === value.length && new Set(known).size === known.length && !isWhole(path)) {
      for (const [at, item] of value.entries()) walk(item, `${path}/${keys[at]}`, leaves);
      return;
    }
  }
  // A room in line is one value: `true` or wishes.
  if (typeof value === "object" && value !== null && !Array.isArray(value) && !path.endsWith("/inLine")) {
    for (const [key, inner] of Object.entries(value)) walk(inner, `${path}/${key}`, leaves);
    return;
  }
  leaves.set(path, JSON.stringify(value));
}

/** Which of the texts in a list hold for something, and which are only words of one value. */
function isWhole(path: string): boolean {
  return path.endsWith("/tasks");
}

function keyOf(item: unknown): string | undefined {
  if (typeof item === "string") return item;
  if (typeof item !== "object" || item === null) return undefined;
  for (const key of KEYS) if (key in item) return String((item as Record<string, unknown>)[key]);
  return undefined;
}
