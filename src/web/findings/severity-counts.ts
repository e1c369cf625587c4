import { type Finding, SEVERITIES, type Severity } from "../../figures/index.ts";

const COUNTED: Record<Severity, string> = {
  stop: "to stop at",
  fix: "to fix",
  note: "to note",
  unproven: "to check by hand",
};

/** How many there are of each severity, in words: `7 to fix, 33 to note`; empty where there is none. */
export function severityCounts(
  findings: readonly Finding[],
  severities: readonly Severity[] = SEVERITIES,
): string {
  const counts: Record<Severity, number> = { stop: 0, fix: 0, note: 0, unproven: 0 };
  for (const { severity } of findings) counts[severity]++;
  return severities
    .filter((severity) => counts[severity] > 0)
    .map((severity) => `${counts[severity]} ${COUNTED[severity]}`)
    .join(", ");
}
