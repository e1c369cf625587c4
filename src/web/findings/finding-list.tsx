import { memo, useCallback, useContext } from "react";
import { type Finding, type Remedy, SEVERITY_WORDS, type Severity } from "../../figures/index.ts";
import { citeText } from "../../sources/index.ts";
import { SeverityIcon } from "../frame/icons.tsx";
import { ShadeOnPageContext } from "../shade/shade-context.tsx";
import { useJob } from "../state/fields.ts";
import { trialOf } from "../state/planning.ts";
import { pick, usePlanner } from "../state/store.ts";
import { Remedies } from "./remedies.tsx";
import "./finding-list.css";

interface FindingListProps {
  findings: readonly Finding[];
  /** Shows what stops or spoils the shade, and counts the rest. */
  short?: boolean;
  onMore?(): void;
}

export function FindingList({ findings, short = false, onMore }: FindingListProps) {
  if (findings.length === 0) return null;
  const heavy = findings.filter((finding) => finding.severity === "stop" || finding.severity === "fix");
  const shown = short ? heavy : findings;
  const rest = findings.length - shown.length;
  return (
    <div className="findings">
      {shown.length > 0 ? (
        <ul>
          {shown.map((finding) => (
            <FindingNote key={`${finding.id} ${finding.path ?? ""}`} finding={finding} />
          ))}
        </ul>
      ) : null}
      {rest > 0 ? (
        <button type="button" className="button-plain small" onClick={onMore}>
          {restText(findings)}
        </button>
      ) : null}
    </div>
  );
}

function restText(findings: readonly Finding[]): string {
  const count = (severity: Severity) => findings.filter((finding) => finding.severity === severity).length;
  const [notes, checks] = [count("note"), count("unproven")];
  return [notes > 0 ? `${notes} to note` : "", checks > 0 ? `${checks} to check by hand` : ""]
    .filter(Boolean)
    .join(", ");
}

/** One finding where its cause is, with what would answer it ready to press. */
export const FindingNote = memo(function FindingNote({ finding }: { finding: Finding }) {
  const job = useJob();
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
      <Remedies remedies={finding.remedies} prove={prove} />
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
  const working = useContext(ShadeOnPageContext)?.workings.get(figure);
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
