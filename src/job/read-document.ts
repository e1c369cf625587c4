import type * as z from "zod";
import { parseLength } from "../units/index.ts";
import { LARGEST_JOB_CHARS } from "./job-text.ts";

/** One thing wrong with a job document: which field, what was given, what would do. */
export interface JobIssue {
  /** `rooms[0].windows[1].opening.widthsMm[0]` */
  field: string;
  given: string;
  wanted: string;
}

/** Deeper nesting than any document of ours has; refused before it can exhaust the stack. */
const DEEPEST = 40;
export const MOST_ISSUES = 20;

/** A document that was read, or what is wrong with the file. */
export type ReadDocument = { ok: true; document: unknown } | { ok: false; issues: JobIssue[] };

/**
 * Reads JSON from text that may be huge, cut short or hostile. Never throws.
 * @param what what it should be: “a job document”
 */
export function readDocument(text: string, what: string): ReadDocument {
  if (text.length > LARGEST_JOB_CHARS) {
    return notRead("(file)", `${text.length} characters`, `at most ${LARGEST_JOB_CHARS}; split it in two`);
  }
  const trimmedText = text.replace(/^﻿/, "");
  if (trimmedText.trim() === "") return notRead("(file)", "nothing", `${what} in JSON`);
  if (nestsDeeperThan(trimmedText, DEEPEST)) {
    return notRead("(file)", `brackets nested more than ${DEEPEST} deep`, `${what}, which nests less`);
  }
  try {
    return { ok: true, document: JSON.parse(trimmedText) };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return notRead(
      "(file)",
      `text that is not JSON: ${shorten(reason)}`,
      `${what}, whole and in JSON; the file may be cut short`,
    );
  }
}

export function notRead(field: string, given: string, wanted: string): { ok: false; issues: JobIssue[] } {
  return { ok: false, issues: [{ field, given, wanted }] };
}

/** Every id of a list that another has already. */
export function repeatedIn(list: readonly { id: string; field: string }[]): JobIssue[] {
  const first = new Map<string, string>();
  return list.flatMap(({ id, field }) => {
    const before = first.get(id);
    if (before === undefined) {
      first.set(id, field);
      return [];
    }
    return [{ field, given: JSON.stringify(id), wanted: `an id of its own: ${before} has it already` }];
  });
}

/** Counts brackets outside strings, so that a hostile file is refused before `JSON.parse` recurses into it. */
function nestsDeeperThan(text: string, limit: number): boolean {
  let depth = 0;
  let inString = false;
  for (let at = 0; at < text.length; at++) {
    const char = text.charCodeAt(at);
    if (inString) {
      if (char === 0x5c) at++;
      else if (char === 0x22) inString = false;
    } else if (char === 0x22) inString = true;
    else if (char === 0x5b || char === 0x7b) {
      if (++depth > limit) return true;
    } else if (char === 0x5d || char === 0x7d) depth--;
  }
  return false;
}

/** Objects with a field called `length`, which no part of a job has. */
export function ownLengths(value: unknown, path: PropertyKey[]): JobIssue[] {
  if (typeof value !== "object" || value === null) return [];
  if (Array.isArray(value)) return value.flatMap((item, i) => ownLengths(item, [...path, i]));
  const here = Object.hasOwn(value, "length")
    ? [
        {
          field: fieldText(path),
          given: "an object",
          wanted: 'no field called "length"; check the spelling, or remove it',
        },
      ]
    : [];
  return [...here, ...Object.entries(value).flatMap(([key, inner]) => ownLengths(inner, [...path, key]))];
}

export function issuesOf(error: z.ZodError, document: unknown): JobIssue[] {
  const flat = error.issues.flatMap((issue) => flatten(issue, []));
  const issues = flat.slice(0, MOST_ISSUES).map(({ path, issue }) => {
    const value = valueAt(document, path);
    return { field: fieldText(path), given: givenText(value), wanted: wantedText(issue, value) };
  });
  const more = flat.length - issues.length;
  if (more > 0)
    issues.push({
      field: "(file)",
      given: `${more} more problems of this kind`,
      wanted: "a document that follows its schema",
    });
  return issues;
}

type Issue = z.core.$ZodIssue;

/** A union reports inside its branches; the branch that got furthest says most. */
function flatten(issue: Issue, prefix: PropertyKey[]): { path: PropertyKey[]; issue: Issue }[] {
  const path = [...prefix, ...issue.path];
  if (issue.code === "invalid_union" && issue.errors.length > 0) {
    const best = issue.errors.reduce((a, b) => (depthOf(b) > depthOf(a) ? b : a));
    if (best.length > 0) return best.flatMap((inner) => flatten(inner, path));
  }
  return [{ path, issue }];
}

function depthOf(issues: Issue[]): number {
  return Math.max(0, ...issues.map((issue) => issue.path.length));
}

function wantedText(issue: Issue, value: unknown): string {
  if (typeof value === "string" && issue.code === "invalid_type" && issue.expected === "number") {
    const length = parseLength(value, "in");
    if (length.ok) return `a number of millimetres, without quotes: ${Number(length.lengthMm.toFixed(3))}`;
  }
  switch (issue.code) {
    case "invalid_type":
      return value === undefined ? `a ${issue.expected}; it is missing` : `a ${issue.expected}`;
    case "too_small":
      return issue.origin === "string" || issue.origin === "array"
        ? `at least ${issue.minimum} long`
        : `at least ${issue.minimum}`;
    case "too_big":
      return issue.origin === "string" || issue.origin === "array"
        ? `at most ${issue.maximum} long`
        : `at most ${issue.maximum}`;
    case "invalid_value":
      return `one of ${issue.values.map((choice) => JSON.stringify(choice)).join(", ")}`;
    case "unrecognized_keys":
      return `no field called ${issue.keys
        .slice(0, 5)
        .map((key) => JSON.stringify(shorten(key)))
        .join(", ")}; check the spelling, or remove it`;
    default:
      return issue.message;
  }
}

function fieldText(path: PropertyKey[]): string {
  const text = path.reduce<string>(
    (sofar, key) =>
      typeof key === "number" ? `${sofar}[${key}]` : sofar === "" ? String(key) : `${sofar}.${String(key)}`,
    "",
  );
  return text === "" ? "(file)" : shorten(text, 120);
}

function valueAt(document: unknown, path: PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === "object" && value !== null && Object.hasOwn(value, key)
        ? (value as Record<PropertyKey, unknown>)[key]
        : undefined,
    document,
  );
}

function shorten(text: string, most = 60): string {
  const flat = text.replace(/\p{Cc}+/gu, " ");
  return flat.length > most ? `${flat.slice(0, most)}…` : flat;
}

export function givenText(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "object") return "an object";
  // Handed over in code, a value can be of a kind that JSON has no text for.
  return typeof value === "string" ? shorten(JSON.stringify(value)) : shorten(String(value));
}
