import { bySeverity, type Finding, groupedBy, type Severity } from "../../figures/index.ts";

/** Findings that come from one cause, over all shades and rules. */
export interface FindingCard {
  /** Id of the cause. */
  id: string;
  /** Of the gravest. */
  severity: Severity;
  /** The answer in one line; where one id alone tells, the first finding’s own words, with its numbers. */
  says: string;
  /** Other findings of the card say it with other numbers. */
  differs: boolean;
  /** The gravest first; those of one shade in the order of the plan. */
  findings: Finding[];
  /** Every shade that has one of them, each once; empty where the job or a room has it. */
  shadeIds: string[];
}

/**
 * One card for one cause, the gravest first and of those the most widespread. Findings without a cause of their own are
 * one where their ids are.
 *
 * @throws where a card has no findings: a bug
 */
export function findingCards(findings: readonly Finding[]): FindingCard[] {
  return [...groupedBy(findings, ({ cause, id }) => cause?.id ?? id)]
    .map(([id, same]) => cardOf(id, same))
    .sort(gravestFirst);
}

function cardOf(id: string, same: Finding[]): FindingCard {
  const findings = same.sort(bySeverity);
  const [first] = findings;
  if (first === undefined) throw new Error("invalid card: no findings");
  // Of a contract there are thousands, and they are gathered anew while somebody types.
  const shadeIds = new Set<string>();
  let differs = false;
  for (const { shadeId, text } of findings) {
    if (shadeId !== undefined) shadeIds.add(shadeId);
    differs ||= text !== first.text;
  }
  return {
    id,
    severity: first.severity,
    says: first.cause?.says ?? first.text,
    differs: differs && first.cause === undefined,
    findings,
    shadeIds: [...shadeIds],
  };
}

function gravestFirst(a: FindingCard, b: FindingCard): number {
  const [first] = a.findings;
  const [other] = b.findings;
  const weight = first === undefined || other === undefined ? 0 : bySeverity(first, other);
  return weight || b.shadeIds.length - a.shadeIds.length;
}
