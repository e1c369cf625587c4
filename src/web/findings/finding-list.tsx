import { useMemo } from "react";
import { type Finding, isGrave, severityCounts } from "../../figures/index.ts";
import { asShown, findingCards } from "../../plan/index.ts";
import { useSameItems } from "../state/use-same-items.ts";
import { FindingCardNote } from "./finding-card.tsx";
import { FindingNote } from "./finding-note.tsx";
import "./finding-list.css";

interface FindingListProps {
  findings: readonly Finding[];
  /** Shows what stops or spoils the shade, and counts the rest. */
  short?: boolean;
  onMore?(): void;
}

/** Findings of one shade, or of the job, one card for each cause. */
export function FindingList({ findings, short = false, onMore }: FindingListProps) {
  const same = useSameItems(findings);
  const cards = useMemo(() => findingCards(same), [same]);
  if (findings.length === 0) return null;
  const shown = short ? cards.filter(isGrave) : cards;
  const rest = severityCounts(
    asShown(cards.filter((card) => !shown.includes(card)).flatMap((card) => card.findings)),
  );
  return (
    <div className="findings">
      {shown.length > 0 ? (
        <ul>
          {shown.map((card) =>
            card.findings.some(({ cause }) => cause !== undefined) && card.findings.length > 1 ? (
              <FindingCardNote key={card.id} card={card} />
            ) : (
              card.findings.map((finding) => (
                <FindingNote key={`${finding.id} ${finding.path ?? ""}`} finding={finding} alone />
              ))
            ),
          )}
        </ul>
      ) : null}
      {rest !== "" ? (
        <button type="button" className="button-plain small" onClick={onMore}>
          {rest}
        </button>
      ) : null}
    </div>
  );
}
