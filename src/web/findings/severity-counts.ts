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
  return severities
    .flatMap((severity) => {
      const count = findings.filter((finding) => finding.severity === severity).length;
      return count === 0 ? [] : [`${count} ${COUNTED[severity]}`];
    })
    .join(", ");
}
