import type { Remedy } from "../figures/index.ts";
import type { Facts } from "./cause.ts";

/** The remedies that the plan itself offers for these findings, each once. */
export function findingsAs({ shade }: Facts, ids: readonly string[]): Remedy[] {
  const seen = new Set<string>();
  return shade.findings
    .filter(({ id }) => ids.includes(id))
    .flatMap(({ remedies }) => remedies)
    .filter(({ label }) => !seen.has(label) && seen.add(label));
}

export function hasFinding({ shade }: Facts, ...ids: string[]): boolean {
  return shade.findings.some(({ id }) => ids.includes(id));
}
