import type * as z from "zod";
import { parseLength } from "../units/index.ts";
import { JOB_FORMAT, JOB_VERSION, type Job, jobSchema } from "./job.ts";
import { LARGEST_JOB_CHARS } from "./job-text.ts";
import { MIGRATIONS } from "./migrations.ts";

/** One thing wrong with a job document: which field, what was given, what would do. */
export interface JobIssue {
  /** `rooms[0].windows[1].opening.widthsMm[0]` */
  field: string;
  given: string;
  wanted: string;
}

export type OpenedJob = { ok: true; job: Job; migratedFrom?: number } | { ok: false; issues: JobIssue[] };

/** Deeper nesting than any job has; refused before it can exhaust the stack. */
const DEEPEST = 40;
const MOST_ISSUES = 20;

/** Reads a job document from text. Never throws: whatever is wrong comes back as issues. */
export function openJobText(text: string): OpenedJob {
  if (text.length > LARGEST_JOB_CHARS) {
    return refuse(
      "(file)",
      `${text.length} characters`,
      `at most ${LARGEST_JOB_CHARS}; split the job in two`,
    );
  }
  const trimmedText = text.replace(/^﻿/, "");
  if (trimmedText.trim() === "") return refuse("(file)", "nothing", "a job document in JSON");
  if (nestsDeeperThan(trimmedText, DEEPEST)) {
    return refuse("(file)", `brackets nested more than ${DEEPEST} deep`, "a job document, which nests less");
  }
  let document: unknown;
  try {
    document = JSON.parse(trimmedText);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refuse(
      "(file)",
      `text that is not JSON: ${shorten(reason)}`,
      "a whole job document in JSON; the file may be cut short",
    );
  }
  return openJob(document);
}

/** Checks, migrates and completes a job document that is already parsed. Never throws. */
export function openJob(document: unknown): OpenedJob {
  if (typeof document !== "object" || document === null || Array.isArray(document)) {
    return refuse("(file)", describe(document), `an object with "format": "${JOB_FORMAT}"`);
  }
  const { format, version } = document as { format?: unknown; version?: unknown };
  if (format !== JOB_FORMAT) return refuse("format", describe(format), `"${JOB_FORMAT}"`);
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return refuse("version", describe(version), `a whole number from 1 to ${JOB_VERSION}`);
  }
  if (version > JOB_VERSION) {
    return refuse(
      "version",
      describe(version),
      `at most ${JOB_VERSION}: the file is from a newer Shadewright; update this one`,
    );
  }
  let current: unknown = document;
  try {
    for (let from = version; from < JOB_VERSION; from++) current = MIGRATIONS[from]?.(current);
  } catch {
    return refuse(
      "version",
      describe(version),
      "a document of that version that can be read; this one is damaged",
    );
  }
  // The schema compares what is called `length` before it knows whether it has a list or a text in hand.
  const strange = ownLengths(current, []);
  if (strange.length > 0) return { ok: false, issues: strange.slice(0, MOST_ISSUES) };
  const parsed = jobSchema.safeParse(current);
  if (!parsed.success) return { ok: false, issues: issuesOf(parsed.error, current) };
  const repeated = repeatedIds(parsed.data);
  if (repeated.length > 0) return { ok: false, issues: repeated };
  return version === JOB_VERSION
    ? { ok: true, job: parsed.data }
    : { ok: true, job: parsed.data, migratedFrom: version };
}

function refuse(field: string, given: string, wanted: string): OpenedJob {
  return { ok: false, issues: [{ field, given, wanted }] };
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
function ownLengths(value: unknown, path: PropertyKey[]): JobIssue[] {
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

function issuesOf(error: z.ZodError, document: unknown): JobIssue[] {
  const flat = error.issues.flatMap((issue) => flatten(issue, []));
  const issues = flat.slice(0, MOST_ISSUES).map(({ path, issue }) => {
    const value = valueAt(document, path);
    return { field: fieldText(path), given: describe(value), wanted: wantedText(issue, value) };
  });
  const more = flat.length - issues.length;
  if (more > 0)
    issues.push({
      field: "(file)",
      given: `${more} more problems of this kind`,
      wanted: "a job document that follows its schema",
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

function describe(value: unknown): string {
  if (value === undefined) return "nothing";
  if (value === null) return "null";
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === "object") return "an object";
  // Handed over in code, a value can be of a kind that JSON has no text for.
  return typeof value === "string" ? shorten(JSON.stringify(value)) : shorten(String(value));
}

/** Ids name things across the plan: each must be the only one of its kind. */
function repeatedIds(job: Job): JobIssue[] {
  const issues: JobIssue[] = [];
  const seen = (list: { id: string; field: string }[]) => {
    const first = new Map<string, string>();
    for (const { id, field } of list) {
      const before = first.get(id);
      if (before === undefined) first.set(id, field);
      else
        issues.push({
          field,
          given: JSON.stringify(id),
          wanted: `an id of its own: ${before} has it already`,
        });
    }
  };
  seen(job.rooms.map((room, r) => ({ id: room.id, field: `rooms[${r}].id` })));
  seen(
    job.rooms.flatMap((room, r) =>
      room.windows.map((window, w) => ({ id: window.id, field: `rooms[${r}].windows[${w}].id` })),
    ),
  );
  seen(job.cloths.map((cloth, c) => ({ id: cloth.id, field: `cloths[${c}].id` })));
  for (const [kind, parts] of Object.entries(job.hardware)) {
    seen((parts ?? []).map((part, p) => ({ id: part.id, field: `hardware.${kind}[${p}].id` })));
  }
  return issues.slice(0, MOST_ISSUES);
}
