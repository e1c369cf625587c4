import { bySeverity, type Finding, SEVERITIES, type Severity } from "../figures/index.ts";
import { type JobIssue, STYLE_NAMES } from "../job/index.ts";
import type { Plan, ShadePlan } from "../plan/index.ts";
import { citeText } from "../sources/index.ts";
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

/** All findings for the screen, heaviest first under each shade, and a line that sums them up. */
export function findingsText(plan: Plan, columns: number): string {
  const shades = plan.shades.map((shade) => headed(shadeTitle(shade), shade.findings, columns)).join("");
  const count = plan.shades.length;
  return (
    headed("The whole job", plan.findings, columns) +
    shades +
    `${count} ${count === 1 ? "shade" : "shades"} planned: ${countText(allFindings(plan))}.\n`
  );
}
