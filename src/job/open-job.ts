import { JOB_FORMAT, JOB_VERSION, type Job, jobSchema } from "./job.ts";
import { MIGRATIONS } from "./migrations.ts";
import {
  givenText,
  issuesOf,
  type JobIssue,
  MOST_ISSUES,
  notRead,
  ownLengths,
  readDocument,
  repeatedIn,
} from "./read-document.ts";

export type OpenedJob = { ok: true; job: Job; migratedFrom?: number } | { ok: false; issues: JobIssue[] };

/** Reads a job document from text. Never throws: whatever is wrong comes back as issues. */
export function openJobText(text: string): OpenedJob {
  const read = readDocument(text, "a job document");
  return read.ok ? openJob(read.document) : read;
}

/** Checks, migrates and completes a job document that is already parsed. Never throws. */
export function openJob(document: unknown): OpenedJob {
  if (typeof document !== "object" || document === null || Array.isArray(document)) {
    return notRead("(file)", givenText(document), `an object with "format": "${JOB_FORMAT}"`);
  }
  const { format, version } = document as { format?: unknown; version?: unknown };
  if (format !== JOB_FORMAT) return notRead("format", givenText(format), `"${JOB_FORMAT}"`);
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1) {
    return notRead("version", givenText(version), `a whole number from 1 to ${JOB_VERSION}`);
  }
  if (version > JOB_VERSION) {
    return notRead(
      "version",
      givenText(version),
      `at most ${JOB_VERSION}: the file is from a newer Shadewright; update this one`,
    );
  }
  let current: unknown = document;
  try {
    for (let from = version; from < JOB_VERSION; from++) current = MIGRATIONS[from]?.(current);
  } catch {
    return notRead(
      "version",
      givenText(version),
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

/** Ids name things across the plan: each must be the only one of its kind. */
function repeatedIds(job: Job): JobIssue[] {
  const issues: JobIssue[] = [];
  const seen = (list: { id: string; field: string }[]) => issues.push(...repeatedIn(list));
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
