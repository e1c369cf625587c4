import { memo, type ReactNode, useCallback, useContext } from "react";
import { type Finding, type Remedy, SEVERITY_WORDS } from "../../figures/index.ts";
import { citeText } from "../../sources/index.ts";
import { SeverityIcon } from "../frame/icons.tsx";
import { ShadeToldContext, useToldJob } from "../shade/shade-context.tsx";
import { trialOf } from "../state/planning.ts";
import { pick, usePlanner } from "../state/store.ts";
import { OnOtherShades } from "./on-other-shades.tsx";
import { Remedies } from "./remedies.tsx";
import "./finding-list.css";
import { useEnglish } from "../state/english.ts";

interface FindingNoteProps {
  finding: Finding;
  /** The shade that it is about, where the page is not that shade’s. */
  where?: ReactNode;
  /** It stands by itself, and not among others of its cause. */
  alone?: boolean;
}

/** One finding where its cause is, with what would answer it ready to press. */
export const FindingNote = memo(function FindingNote({ finding, where, alone = false }: FindingNoteProps) {
  useEnglish();
  const job = useToldJob();
  const prove = useCallback((remedy: Remedy) => trialOf(job).proven(finding, remedy), [job, finding]);
  return (
    <li className="finding" data-severity={finding.severity} data-finding={finding.id}>
      <p className="finding-text">
        <b className="finding-severity">
          <SeverityIcon severity={finding.severity} />
          {SEVERITY_WORDS[finding.severity]}
        </b>{" "}
        {finding.text}
      </p>
      {where ? <p className="finding-where">{where}</p> : null}
      <Remedies remedies={finding.remedies} prove={prove} />
      {alone && finding.remedies.length > 0 && !finding.isChoice ? (
        <OnOtherShades cardId={finding.cause?.id ?? finding.id} />
      ) : null}
      <p className="finding-source">
        {finding.figures?.map((figure) => (
          <FigureLink key={figure} figure={figure} />
        ))}
        {citeText(finding.cite)}
      </p>
    </li>
  );
});

/** The working that a finding leans on, where the page has it. */
function FigureLink({ figure }: { figure: string }) {
  const working = useContext(ShadeToldContext)?.workings.get(figure);
  const picked = usePlanner((planner) => planner.view.picked?.figure === figure);
  if (!working) return null;
  return (
    <button
      type="button"
      className="button-plain small"
      aria-expanded={picked}
      onClick={() => pick(picked ? undefined : { figure })}
    >
      {working.label}
    </button>
  );
}
