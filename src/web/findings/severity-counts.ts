import { type Finding, isGraver, SEVERITIES, type Severity } from "../../figures/index.ts";

const COUNTED: Record<Severity, string> = {
  stop: "to stop at",
  fix: "to fix",
  note: "to note",
  unproven: "to check by hand",
};

/** How many there are of each severity, in words: `7 to fix, 33 to note`; empty where there is none. */
export function severityCounts(counted: readonly { severity: Severity }[]): string {
  const counts: Record<Severity, number> = { stop: 0, fix: 0, note: 0, unproven: 0 };
  for (const { severity } of counted) counts[severity]++;
  return SEVERITIES.filter((severity) => counts[severity] > 0)
    .map((severity) => severityCount(severity, counts[severity]))
    .join(", ");
}

/** `6 to note`. */
export function severityCount(severity: Severity, count: number): string {
  return `${count} ${COUNTED[severity]}`;
}

/** What a list on the page of a shade shows: one card for all findings of a cause, and every other finding by itself. */
export function asShown(findings: readonly Finding[]): { severity: Severity }[] {
  const shown: { severity: Severity }[] = [];
  const ofCause = new Map<string, { severity: Severity }>();
  for (const { cause, severity } of findings) {
    const card = cause === undefined ? undefined : ofCause.get(cause.id);
    if (card !== undefined) {
      if (isGraver(severity, card.severity)) card.severity = severity;
      continue;
    }
    const next = { severity };
    shown.push(next);
    if (cause !== undefined) ofCause.set(cause.id, next);
  }
  return shown;
}
