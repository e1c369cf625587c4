import { useMemo } from "react";
import type { Finding } from "../../figures/index.ts";
import { findingCards } from "../../plan/index.ts";
import { useSameItems } from "../state/use-same-items.ts";
import { FindingCardNote } from "./finding-card.tsx";
import { FindingNote } from "./finding-note.tsx";
import { severityCounts } from "./severity-counts.ts";
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
  const shown = short ? cards.filter(({ severity }) => severity === "stop" || severity === "fix") : cards;
  const rest = findings.length - shown.reduce((sum, card) => sum + card.findings.length, 0);
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
      {rest > 0 ? (
        <button type="button" className="button-plain small" onClick={onMore}>
          {severityCounts(findings, ["note", "unproven"])}
        </button>
      ) : null}
    </div>
  );
}
