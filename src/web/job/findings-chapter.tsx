import { memo, type ReactNode, useCallback, useMemo, useState } from "react";
import { Link } from "wouter";
import { severityCounts } from "../../figures/index.ts";
import { type FindingCard, findingCards } from "../../plan/index.ts";
import { FindingCardNote } from "../findings/finding-card.tsx";
import { FindingNote } from "../findings/finding-note.tsx";
import { Chapter } from "../frame/chapter.tsx";
import { useJob } from "../state/fields.ts";
import type { JobSummary } from "../state/job-summary.ts";

/** Windows that a card names; the rest are counted. */
const MOST_NAMED = 3;

/** More cards than these are a long way to read: those that only note something are folded away. */
const MOST_UNFOLDED = 6;

/** Everything that was found, one card for each cause over all shades; it stands on each shade's page as well. */
export const FindingsChapter = memo(function FindingsChapter({
  summary,
}: {
  summary: JobSummary | undefined;
}) {
  const { id: jobId, rooms } = useJob();
  const findings = summary?.findings;
  const cards = useMemo(() => findingCards(findings ?? []), [findings]);
  const sentence = findings === undefined ? "Being gathered." : countSentence(cards);
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
  const folds = cards.length > MOST_UNFOLDED && cards.some(isNote);
  return (
    <Chapter id="findings" sentence={sentence}>
      <Cards cards={folds ? cards.filter((card) => !isNote(card)) : cards} whereOf={whereOf} />
      {folds ? <Notes cards={cards.filter(isNote)} whereOf={whereOf} /> : null}
    </Chapter>
  );
});

const isNote = ({ severity }: FindingCard): boolean => severity === "note";

interface CardsProps {
  cards: readonly FindingCard[];
  whereOf: (shadeIds: readonly string[]) => ReactNode;
}

function Cards({ cards, whereOf }: CardsProps) {
  return (
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
  );
}

/** What is only to be noted, folded away until somebody has the time. */
function Notes({ cards, whereOf }: CardsProps) {
  const [open, setOpen] = useState(false);
  return (
    <details className="more-settings" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{severityCounts(cards)}</summary>
      {open ? <Cards cards={cards} whereOf={whereOf} /> : null}
    </details>
  );
}

function countSentence(cards: readonly FindingCard[]): string {
  const counts = severityCounts(cards);
  return counts === "" ? "Nothing was found." : `${counts}.`;
}
