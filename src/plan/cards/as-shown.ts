import { type Finding, isGraver, type Severity } from "../../figures/index.ts";

/** What a list of one shade’s findings shows: one card for all findings of a cause, and every other finding by itself. */
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
