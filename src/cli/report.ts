import { bySeverity, type Finding, SEVERITIES, type Severity } from "../figures/index.ts";
import { type JobIssue, STYLE_NAMES } from "../job/index.ts";
import type { Plan, ShadePlan } from "../plan/index.ts";
import { citeText } from "../sources/index.ts";
import { counted } from "../words/index.ts";
import { plainLine, wrapped } from "./plain-text.ts";

/** Severity words stand in a column of their own. */
const MARGIN = " ".repeat(12);

/** What is wrong with the input: field, what was given, what would do. */
export function issuesText(subject: string, issues: readonly JobIssue[], columns: number): string {
  const blocks = issues.map(({ field, given, wanted }) =>
    [
      `  ${plainLine(field)}`,
      `    given  ${wrapped(given, columns - 11, " ".repeat(11))}`,
      `    wants  ${wrapped(wanted, columns - 11, " ".repeat(11))}`,
    ].join("\n"),
  );
  return `${plainLine(subject)} cannot be used as it stands:\n${blocks.join("\n")}\n`;
}

function findingText({ severity, text, cite, remedies }: Finding, columns: number): string {
  const room = columns - MARGIN.length;
  const lines = [
    `  ${severity.padEnd(MARGIN.length - 2)}${wrapped(text, room, MARGIN)}`,
    `${MARGIN}${wrapped(`Source: ${citeText(cite)}`, room, MARGIN)}`,
  ];
  if (remedies.length > 0) {
    const labels = remedies.map(({ label }) => label).join("; or: ");
    lines.push(`${MARGIN}${wrapped(`Would do: ${labels}`, room, MARGIN)}`);
  }
  return lines.join("\n");
}

function headed(title: string, findings: readonly Finding[], columns: number): string {
  if (findings.length === 0) return "";
  const blocks = [...findings].sort(bySeverity).map((finding) => findingText(finding, columns));
  return `${plainLine(title)}\n${blocks.join("\n")}\n\n`;
}

function shadeTitle({ roomName, windowName, shadeId, style }: ShadePlan): string {
  return `${roomName} · ${windowName} (${shadeId}), ${STYLE_NAMES[style]} shade`;
}

/** Most windows that are named where many have the same finding. */
const MOST_NAMED = 6;

/** So many windows with one kind of finding are told apart, each with its own numbers. */
const FEW = 3;

interface Group {
  first: Finding;
  where: string[];
}

function groupedBy(
  found: readonly { finding: Finding; shadeId: string }[],
  keyOf: (finding: Finding) => string,
): Group[] {
  const groups = new Map<string, Group>();
  for (const { finding, shadeId } of found) {
    const group = groups.get(keyOf(finding)) ?? { first: finding, where: [] };
    groups.set(keyOf(finding), group);
    if (!group.where.includes(shadeId)) group.where.push(shadeId);
  }
  return [...groups.values()];
}

/** The same finding on many windows is said once, with the numbers of the first and the names of all. */
function grouped(shades: readonly ShadePlan[], columns: number): string {
  const found = shades.flatMap(({ findings, shadeId }) => findings.map((finding) => ({ finding, shadeId })));
  const kindOf = ({ severity, id }: Finding) => `${severity} ${id}`;
  const many = new Set(
    groupedBy(found, kindOf).flatMap(({ first, where }) => (where.length > FEW ? [kindOf(first)] : [])),
  );
  const groups = groupedBy(found, (finding) =>
    many.has(kindOf(finding)) ? kindOf(finding) : `${kindOf(finding)} ${finding.text}`,
  );
  if (groups.length === 0) return "";
  const blocks = groups
    .sort((a, b) => bySeverity(a.first, b.first) || b.where.length - a.where.length)
    .map(({ first, where }) => `${findingText(first, columns)}\n${whereText(where, columns)}`);
  return `${blocks.join("\n")}\n\n`;
}

function whereText(where: readonly string[], columns: number): string {
  const named = where.slice(0, MOST_NAMED).join(", ");
  const more = where.length > MOST_NAMED ? ` and ${where.length - MOST_NAMED} more` : "";
  const text =
    where.length === 1 ? `At ${named}` : `At ${where.length} windows, here ${where[0]}: ${named}${more}`;
  return `${MARGIN}${wrapped(text, columns - MARGIN.length, MARGIN)}`;
}

/** Every finding of the job. */
export function allFindings(plan: Plan): Finding[] {
  return [...plan.findings, ...plan.shades.flatMap((shade) => shade.findings)];
}

function countText(findings: readonly Finding[]): string {
  const counts = new Map<Severity, number>();
  for (const { severity } of findings) counts.set(severity, (counts.get(severity) ?? 0) + 1);
  const parts = SEVERITIES.flatMap((severity) =>
    counts.has(severity) ? [`${counts.get(severity)} ${severity}`] : [],
  );
  return parts.length === 0 ? "nothing found" : parts.join(", ");
}

/** All findings for the screen, the heaviest first, and a line that sums them up. */
export function findingsText(plan: Plan, columns: number): string {
  const [only] = plan.shades;
  const shades =
    only !== undefined && plan.shades.length === 1
      ? headed(shadeTitle(only), only.findings, columns)
      : grouped(plan.shades, columns);
  const count = plan.shades.length;
  return (
    headed("The whole job", plan.findings, columns) +
    shades +
    `${counted(count, "shade")} planned: ${countText(allFindings(plan))}.\n`
  );
}
