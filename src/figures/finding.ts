import type { Cite } from "../sources/index.ts";
import { lazy } from "./lazy.ts";

/**
 * - `stop`: cannot be made, or must not be made so
 * - `fix`: will work badly
 * - `note`: worth knowing
 * - `unproven`: needs a physical test or a fact that was not given
 */
export const SEVERITIES = ["stop", "fix", "note", "unproven"] as const;
export type Severity = (typeof SEVERITIES)[number];

/** Whether it stops a shade or spoils it: what must be mended, beside what is noted or not proven. */
export function isGrave<T extends { severity: Severity }>(one: T): one is T & { severity: "stop" | "fix" } {
  return one.severity === "stop" || one.severity === "fix";
}

/** Whether one comes before the other in the order of severities. */
export function isGraver(one: Severity, other: Severity): boolean {
  return SEVERITIES.indexOf(one) < SEVERITIES.indexOf(other);
}

/** As screen and paper say it. */
export const SEVERITY_WORDS: Record<Severity, string> = {
  stop: "Stop",
  fix: "Fix",
  note: "Note",
  unproven: "Check by hand",
};

/** One operation of RFC 6902 JSON Patch on the job document. */
export type PatchOperation =
  | { op: "add" | "replace"; path: string; value: unknown }
  | { op: "remove"; path: string };

/** A change to the job that would answer a finding, ready to press. */
export interface Remedy {
  label: string;
  /** What else it changes, for beside the label. */
  changes?: string;
  /** The same thing without the numbers of one shade, where the label has some: what is done to several. */
  deed?: string;
  patch: PatchOperation[];
}

/** A problem of the plan, in one sentence with its numbers. */
export interface Finding {
  /** Stable name of the rule, `stage.what`, e.g. `fold.stack-over-limit`. */
  id: string;
  severity: Severity;
  /** The stage of the work in which it belongs on the page. */
  stage: Stage;
  /** The shade it concerns; absent for the job as a whole. */
  shadeId?: string;
  text: string;
  cite: Cite;
  /** JSON pointer of the job field that causes it. */
  path?: string;
  /** Ids of the workings that it leans on. */
  figures?: string[];
  /** What it comes from, where other findings come from the same; else its id alone tells. */
  cause?: FindingCause;
  /** How many cases it tells of, where it sums up several. */
  cases?: number;
  /** It tells what the planner chose, and its remedies are other ways that are as good. */
  isChoice?: true;
  remedies: Remedy[];
}

/** One cause of several findings, on one shade or on many. */
export interface FindingCause {
  id: string;
  /** The answer in one line, true of every shade that has it: no numbers. */
  says: string;
}

/** The walk through a job, in the order of the work. */
export const STAGES = [
  "measure",
  "shape",
  "cloth",
  "lift",
  "rig",
  "board",
  "safety",
  "make",
  "cost",
] as const;
export type Stage = (typeof STAGES)[number];

/** The same finding with its remedies changed; neither the ones nor the others are made before someone reads them. */
export function withRemedies(finding: Finding, change: (remedies: readonly Remedy[]) => Remedy[]): Finding {
  const { remedies, ...others } = Object.getOwnPropertyDescriptors(finding);
  if (remedies.get === undefined && finding.remedies.length === 0) return finding;
  const get = lazy(() => change(finding.remedies));
  const changed = { get, enumerable: true, configurable: true };
  return Object.defineProperties({}, { ...others, remedies: changed }) as Finding;
}

/** The gravest first; otherwise in the order of the work. */
export function bySeverity(a: Finding, b: Finding): number {
  return (
    SEVERITIES.indexOf(a.severity) - SEVERITIES.indexOf(b.severity) ||
    STAGES.indexOf(a.stage) - STAGES.indexOf(b.stage)
  );
}
