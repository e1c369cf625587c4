import { memo, useCallback, useContext } from "react";
import type { Finding, Remedy, Weight } from "../../account/index.ts";
import { citeText } from "../../sources/index.ts";
import { WeightIcon } from "../frame/icons.tsx";
import { ShadeContext } from "../shade/shade-context.tsx";
import { useJob } from "../state/fields.ts";
import { trialOf } from "../state/planning.ts";
import { pick, usePlanner } from "../state/store.ts";
import { Remedies } from "./remedies.tsx";
import "./finding-list.css";

export const WEIGHT_WORDS: Record<Weight, string> = {
  stop: "Stop",
  fix: "Fix",
  mind: "Mind",
  unproven: "Unproven",
};

interface FindingListProps {
  findings: readonly Finding[];
  /** Shows what stops or spoils the shade, and counts the rest. */
  brief?: boolean;
  onMore?(): void;
}

export function FindingList({ findings, brief = false, onMore }: FindingListProps) {
  if (findings.length === 0) return null;
  const heavy = findings.filter((finding) => finding.weight === "stop" || finding.weight === "fix");
  const shown = brief ? heavy : findings;
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
  const count = (weight: Weight) => findings.filter((finding) => finding.weight === weight).length;
  const [mind, unproven] = [count("mind"), count("unproven")];
  return [mind > 0 ? `${mind} to mind` : "", unproven > 0 ? `${unproven} unproven` : ""]
    .filter(Boolean)
    .join(", ");
}

/** One finding where its cause is, with what would answer it ready to press. */
export const FindingNote = memo(function FindingNote({ finding }: { finding: Finding }) {
  const job = useJob();
  const cures = useCallback((remedy: Remedy) => trialOf(job).cures(finding, remedy), [job, finding]);
  return (
    <li className="finding" data-weight={finding.weight} data-finding={finding.id}>
      <p className="finding-text">
        <b className="finding-weight">
          <WeightIcon weight={finding.weight} />
          {WEIGHT_WORDS[finding.weight]}
        </b>{" "}
        {finding.text}
      </p>
      <Remedies remedies={finding.remedies} cures={cures} />
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
  const working = useContext(ShadeContext)?.workings.get(figure);
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
