import { useCallback, useMemo } from "react";
import { Link } from "wouter";
import { type Finding, SEVERITIES, SEVERITY_WORDS } from "../../figures/index.ts";
import { findingCards } from "../../plan/index.ts";
import { FindingCardNote } from "../findings/finding-card.tsx";
import { FindingNote } from "../findings/finding-note.tsx";
import { Chapter } from "../frame/chapter.tsx";
import { useJob } from "../state/fields.ts";
import type { JobSummary } from "../state/job-summary.ts";

/** Windows that a card names; the rest are counted. */
const MOST_NAMED = 6;

/** Everything that was found, one card for each cause over all shades; it stands on each shade's page as well. */
export function FindingsChapter({ summary }: { summary: JobSummary | undefined }) {
  const { id: jobId, rooms } = useJob();
  const findings = summary?.findings;
  const cards = useMemo(() => findingCards(findings ?? []), [findings]);
  const names = useMemo(
    () =>
      new Map(rooms.flatMap(({ name, windows }) => windows.map((one) => [one.id, `${name}, ${one.name}`]))),
    [rooms],
  );
  const whereOf = useCallback(
    (shadeIds: readonly string[]) => {
      if (shadeIds.length === 0) return null;
      const more = shadeIds.length - MOST_NAMED;
      return (
        <>
          {shadeIds.slice(0, MOST_NAMED).map((id, i) => (
            <span key={id}>
              {i === 0 ? "" : "; "}
              <Link href={`/job/${jobId}/${id}`}>{names.get(id) ?? id}</Link>
            </span>
          ))}
          {more > 0 ? ` and ${more} more` : ""}
        </>
      );
    },
    [jobId, names],
  );
  return (
    <Chapter id="findings" sentence={countSentence(findings ?? [], summary === undefined)}>
      <ul className="findings">
        {cards.map((card) => {
          const [first] = card.findings;
          return card.findings.length === 1 && first !== undefined ? (
            <FindingNote key={card.id} finding={first} where={whereOf(card.shadeIds)} />
          ) : (
            <FindingCardNote key={card.id} card={card} whereOf={whereOf} />
          );
        })}
      </ul>
    </Chapter>
  );
}

function countSentence(findings: readonly Finding[], waiting: boolean): string {
  if (waiting) return "Being gathered.";
  const counts = SEVERITIES.flatMap((severity) => {
    const count = findings.filter((finding) => finding.severity === severity).length;
    return count === 0 ? [] : `${count} ${SEVERITY_WORDS[severity].toLowerCase()}`;
  });
  return counts.length === 0 ? "Nothing was found." : `${counts.join(", ")}.`;
}
