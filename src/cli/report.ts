import { bySeverity, type Finding, groupedBy, severityCounts } from "../figures/index.ts";
import { type JobIssue, STYLE_NAMES } from "../job/index.ts";
import { answersOf, type FindingCard, findingCards, type Plan, type ShadePlan } from "../plan/index.ts";
import { citeInShort, citeText } from "../sources/index.ts";
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

/** One card for one cause over all shades, the gravest first: what it is, what would do, and what it fails. */
function cardsText(plan: Plan, cards: readonly FindingCard[], columns: number): string {
  const several = plan.shades.length > 1;
  const blocks = cards.map((card) =>
    card.findings.every(({ cause }) => cause === undefined)
      ? entriesOf(card)
          .map((entry) =>
            [findingText(entry.first, columns), ...(several ? [lined(atText(entry), columns)] : [])].join(
              "\n",
            ),
          )
          .join("\n")
      : causeText(plan, card, columns),
  );
  return blocks.length === 0 ? "" : `${blocks.join("\n")}\n\n`;
}

/** The answer first and what to do; each rule or finding behind it after that. */
function causeText(plan: Plan, card: FindingCard, columns: number): string {
  const { severity, says, shadeIds } = card;
  const several = plan.shades.length > 1;
  const lines = [`  ${severity.padEnd(MARGIN.length - 2)}${wrapped(says, columns - MARGIN.length, MARGIN)}`];
  if (several) lines.push(lined(atText({ where: shadeIds }), columns));
  const answers = answersOf(plan, card).map(({ label }) => label);
  if (answers.length > 0) {
    const all = several && shadeIds.length > 1 ? `Would do for all ${shadeIds.length}` : "Would do";
    lines.push(lined(`${all}: ${answers.join("; or: ")}`, columns));
  }
  for (const entry of entriesOf(card)) {
    const { first, where, differs } = entry;
    const at = differs || where.length < shadeIds.length ? ` ${atText(entry)}.` : "";
    // What to beware of in a source stands once, in the review.
    const text = `${first.text}${at} Source: ${citeInShort(first.cite)}.`;
    lines.push(`${MARGIN}- ${wrapped(text, columns - MARGIN.length - 2, `${MARGIN}  `)}`);
  }
  return lines.join("\n");
}

interface Entry {
  first: Finding;
  where: string[];
  /** The others say it with other numbers. */
  differs?: boolean;
}

/** The same finding on many windows is said once, with the numbers of the first and the names of all. */
function entriesOf({ findings }: FindingCard): Entry[] {
  const kinds = [...groupedBy(findings, kindOf)].flatMap(([kind, alike]) =>
    entryOf(alike).map(({ where }) => ({ kind, count: where.length })),
  );
  const many = new Set(kinds.filter(({ count }) => count > FEW).map(({ kind }) => kind));
  const keyOf = (finding: Finding) =>
    many.has(kindOf(finding)) ? kindOf(finding) : `${kindOf(finding)} ${finding.text}`;
  return [...groupedBy(findings, keyOf).values()]
    .flatMap(entryOf)
    .sort((a, b) => bySeverity(a.first, b.first) || b.where.length - a.where.length);
}

function kindOf({ severity, id }: Finding): string {
  return `${severity} ${id}`;
}

function entryOf(alike: readonly Finding[]): Entry[] {
  const [first] = alike;
  if (first === undefined) return [];
  const where = [...new Set(alike.map(({ shadeId = "" }) => shadeId))];
  return [{ first, where, differs: alike.some(({ text }) => text !== first.text) }];
}

function atText({ where, differs = false }: Pick<Entry, "where" | "differs">): string {
  const named = where.slice(0, MOST_NAMED).join(", ");
  const more = where.length > MOST_NAMED ? ` and ${where.length - MOST_NAMED} more` : "";
  const all = where.length === 1 ? `At ${named}` : `At ${where.length} windows: ${named}${more}`;
  return differs ? `${all} (numbers of ${where[0]})` : all;
}

function lined(text: string, columns: number): string {
  return `${MARGIN}${wrapped(text, columns - MARGIN.length, MARGIN)}`;
}

/** Every finding of the job. */
export function allFindings(plan: Plan): Finding[] {
  return [...plan.findings, ...plan.shades.flatMap((shade) => shade.findings)];
}

/** All findings for the screen, the heaviest first, and a line that sums up what is said: a cause of many findings is one. */
export function findingsText(plan: Plan, columns: number): string {
  const [only] = plan.shades;
  const count = plan.shades.length;
  const title = only !== undefined && count === 1 ? `${plainLine(shadeTitle(only))}\n` : "";
  const cards = findingCards(plan.shades.flatMap(({ findings }) => findings));
  const found = severityCounts([...plan.findings, ...cards]) || "nothing found";
  const said = cardsText(plan, cards, columns);
  return (
    headed("The whole job", plan.findings, columns) +
    (said === "" ? "" : `${title}${said}`) +
    `${counted(count, "shade")} planned: ${found}.\n`
  );
}
