import { memo, type ReactNode, useState } from "react";
import { SEVERITY_WORDS } from "../../figures/index.ts";
import type { FindingCard } from "../../plan/index.ts";
import { counted } from "../../words/index.ts";
import { SeverityIcon } from "../frame/icons.tsx";
import { FindingNote } from "./finding-note.tsx";
import { OnOtherShades } from "./on-other-shades.tsx";
import { RemedyButtons } from "./remedies.tsx";
import { useAnswers } from "./use-answers.ts";
import "./finding-list.css";
import { useEnglish } from "../state/english.ts";

/** What answers a cause on more shades than this is looked for when it is asked for. */
const MOST_AT_ONCE = 24;

interface FindingCardNoteProps {
  card: FindingCard;
  /** Names the shades of the card, or of one of its findings, where the page is not one shade’s. */
  whereOf?: (shadeIds: readonly string[]) => ReactNode;
}

/** One cause: the answer in one line and what to do; each rule or finding behind it, folded away. */
export const FindingCardNote = memo(function FindingCardNote({ card, whereOf }: FindingCardNoteProps) {
  useEnglish();
  const { severity, says, differs, shadeIds, findings } = card;
  const [asked, setAsked] = useState(false);
  const [open, setOpen] = useState(false);
  const wanted = asked || shadeIds.length <= MOST_AT_ONCE;
  const { remedies, stale } = useAnswers(card, wanted);
  return (
    <li className="finding" data-severity={severity} data-card={card.id}>
      <p className="finding-text">
        <b className="finding-severity">
          <SeverityIcon severity={severity} />
          {SEVERITY_WORDS[severity]}
        </b>{" "}
        {says}
        {differs && whereOf ? <> Its numbers are those of {whereOf(shadeIds.slice(0, 1))}.</> : null}
      </p>
      {whereOf ? <p className="finding-where">{whereOf(shadeIds)}</p> : null}
      <RemedyButtons remedies={remedies} of={shadeIds.length} stale={stale} />
      {whereOf ? null : <OnOtherShades cardId={card.id} />}
      {wanted ? null : (
        <button type="button" className="button button-small" onClick={() => setAsked(true)}>
          What would do for all {shadeIds.length}?
        </button>
      )}
      <details className="finding-behind" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>{counted(findings.length, "reason")}, with figures and sources</summary>
        {open ? (
          <ul className="findings">
            {findings.map((finding) => (
              <FindingNote
                key={`${finding.id} ${finding.path ?? ""} ${finding.shadeId ?? ""}`}
                finding={finding}
                where={finding.shadeId === undefined ? undefined : whereOf?.([finding.shadeId])}
              />
            ))}
          </ul>
        ) : null}
      </details>
    </li>
  );
});
