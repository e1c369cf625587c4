import type { JobIssue } from "../job/index.ts";

/** What the user gave cannot be used: said with field, value and what would do; the program ends with 2. */
export class BadInput extends Error {
  readonly issues: JobIssue[];
  /** What was being read, for the first line. */
  readonly subject: string;

  constructor(subject: string, issues: JobIssue[]) {
    super(`${subject}: ${issues.length} to put right`);
    this.subject = subject;
    this.issues = issues;
  }
}

export function badInput(field: string, given: string, wanted: string): BadInput {
  return new BadInput(field, [{ field, given, wanted }]);
}
