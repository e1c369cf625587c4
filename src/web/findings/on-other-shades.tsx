import { useContext, useMemo, useState } from "react";
import { type FindingCard, findingCards } from "../../plan/index.ts";
import { counted } from "../../words/index.ts";
import { ShadeToldContext, useToldJob } from "../shade/shade-context.tsx";
import { useJobSummary } from "../state/use-job-summary.ts";
import { windowCount } from "../workers/hangs.ts";
import { RemedyButtons } from "./remedies.tsx";
import { useAnswers } from "./use-answers.ts";

/** On the page of one shade: what answers its cause on every shade of the job that has it, looked for when it is asked for. */
export function OnOtherShades({ cardId }: { cardId: string }) {
  const shade = useContext(ShadeToldContext);
  const windows = windowCount(useToldJob());
  const [asked, setAsked] = useState(false);
  if (shade === undefined || windows < 2) return null;
  if (asked) return <OfAllShades cardId={cardId} shadeId={shade.window.id} />;
  return (
    <p className="finding-elsewhere">
      <button type="button" className="button-plain small" onClick={() => setAsked(true)}>
        Do it for all shades?
      </button>
    </p>
  );
}

function OfAllShades({ cardId, shadeId }: { cardId: string; shadeId: string }) {
  const { summary } = useJobSummary();
  const card = useMemo(
    () => findingCards(summary?.findings ?? []).find(({ id }) => id === cardId),
    [summary, cardId],
  );
  if (summary === undefined) return <p className="finding-elsewhere small">Being gathered.</p>;
  if (card === undefined || card.shadeIds.every((id) => id === shadeId))
    return <p className="finding-elsewhere small">No other shade has it.</p>;
  return <AnswersForAll card={card} shadeId={shadeId} />;
}

function AnswersForAll({ card, shadeId }: { card: FindingCard; shadeId: string }) {
  const { rooms } = useToldJob();
  const { remedies, stale } = useAnswers(card, true);
  const others = useMemo(() => {
    const ids = new Set(card.shadeIds);
    return rooms.flatMap(({ name, windows }) =>
      windows.flatMap((one) => (one.id !== shadeId && ids.has(one.id) ? [`${name}, ${one.name}`] : [])),
    );
  }, [rooms, card, shadeId]);
  const more = others.length - MOST_NAMED;
  return (
    <div className="finding-elsewhere">
      <p className="small">
        {counted(others.length, "other shade")} with it: {others.slice(0, MOST_NAMED).join("; ")}
        {more > 0 ? ` and ${more} more` : ""}.
        {!stale && remedies.length === 0 ? " No one change answers it on all of them." : ""}
      </p>
      <RemedyButtons remedies={remedies} of={card.shadeIds.length} stale={stale} />
    </div>
  );
}

/** Windows that are named; the rest are counted. */
const MOST_NAMED = 6;
