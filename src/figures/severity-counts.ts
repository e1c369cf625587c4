import { SEVERITIES, type Severity } from "./finding.ts";

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
