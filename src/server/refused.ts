import type { JobIssue } from "../job/index.ts";

/** A request that is turned down, with the words and the status that its answer has. */
export class Refused extends Error {
  readonly status: 400 | 401 | 403 | 404 | 409 | 410 | 413 | 415 | 421 | 426 | 429 | 507;
  readonly issues: readonly JobIssue[];

  constructor(status: Refused["status"], sentence: string, issues: readonly JobIssue[] = []) {
    super(sentence);
    this.status = status;
    this.issues = issues;
  }
}

export const notHere = () => new Refused(404, "There is nothing at this address.");
export const notSignedIn = () => new Refused(401, "Sign in first.");
export const notAllowed = () => new Refused(403, "Your part in this workroom does not include that.");
