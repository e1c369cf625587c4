import { type Finding, type Remedy, segmentsOf } from "../../figures/index.ts";
import { fieldAccepts } from "../../job/index.ts";

/** Whether every field that a remedy sets takes its value, as the job's schema has it. */
function isWithinFields({ patch }: Remedy): boolean {
  return patch.every((operation) =>
    fieldAccepts(segmentsOf(operation.path), operation.op === "remove" ? undefined : operation.value),
  );
}

/** Findings without the remedies that the job's own fields would refuse: those never leave the plan. */
export function withinFields(findings: readonly Finding[]): Finding[] {
  return findings.map((finding) =>
    finding.remedies.every(isWithinFields)
      ? finding
      : { ...finding, remedies: finding.remedies.filter(isWithinFields) },
  );
}
