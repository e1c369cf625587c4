import { useCallback, useId, useMemo, useState } from "react";
import {
  answersCause,
  type Cause,
  diagnose,
  type Evidence,
  SYMPTOM_NAMES,
  SYMPTOMS,
  type Symptom,
} from "../../diagnose/index.ts";
import type { Remedy } from "../../figures/index.ts";
import { citeText } from "../../sources/index.ts";
import { Fig } from "../figures/fig.tsx";
import { Remedies } from "../findings/remedies.tsx";
import { useShade } from "../shade/shade-context.tsx";
import { usePlanner } from "../state/store.ts";

const EVIDENCE: Record<Evidence, string> = {
  "points-to-it": "the numbers point to it",
  "cannot-tell": "only a look can tell",
  "speaks-against": "the numbers speak against it",
};

/** Pick what is wrong; causes come ranked by this shade's own numbers. */
export function Causes() {
  const id = useId();
  // Folded away it answers nothing; what was picked stays.
  const isOpen = usePlanner((planner) => planner.view.open.ask === true);
  const [symptom, setSymptom] = useState<Symptom | "">("");
  return (
    <div className="ask-causes">
      <div className="field field-wide">
        <label htmlFor={id} className="field-label">
          What is wrong?
        </label>
        <span className="field-line field-select">
          <select
            id={id}
            className="field-input"
            value={symptom}
            onChange={(event) => setSymptom(event.target.value as Symptom | "")}
          >
            <option value="">nothing: it hangs well</option>
            {SYMPTOMS.map((one) => (
              <option key={one} value={one}>
                {SYMPTOM_NAMES[one]}
              </option>
            ))}
          </select>
        </span>
      </div>
      <ol className="ask-answers" aria-live="polite">
        {isOpen && symptom !== "" ? <CausesOf symptom={symptom} /> : null}
      </ol>
    </div>
  );
}

function CausesOf({ symptom }: { symptom: Symptom }) {
  const { job, plan, place } = useShade();
  const { room, window } = place;
  const causes = useMemo(
    () => diagnose(job, room, window, symptom, plan),
    [job, room, window, symptom, plan],
  );
  return causes.map((cause) => <CauseNote key={cause.id} cause={cause} />);
}

function CauseNote({ cause }: { cause: Cause }) {
  const { job, place } = useShade();
  const { room, window } = place;
  const prove = useCallback(
    (remedy: Remedy) => (answersCause(job, room, window, cause, remedy) ? remedy : undefined),
    [job, room, window, cause],
  );
  return (
    <li className="ask-answer" data-evidence={cause.evidence} data-cause={cause.id}>
      <h3>
        {cause.title} <span className="ask-evidence">{EVIDENCE[cause.evidence]}</span>
      </h3>
      <p>{cause.why}</p>
      <p>
        <b>To be sure:</b> {cause.test}
      </p>
      <p>
        <b>Cure:</b> {cause.cure}
      </p>
      <Remedies remedies={cause.remedies} prove={prove} />
      <p className="finding-source">
        {cause.figures?.map((figure) => (
          <span key={figure}>
            <Fig id={figure}>working</Fig>{" "}
          </span>
        ))}
        {citeText(cause.cite)}
      </p>
    </li>
  );
}
