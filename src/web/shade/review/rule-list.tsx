import type { Severity } from "../../../figures/index.ts";
import {
  CONFIDENCE_NAMES,
  RULE_OUTCOME_NAMES,
  type RuleOutcome,
  type RuleResult,
  type RuleSource,
  STATUS_NAMES,
} from "../../../shade-plan/index.ts";
import { citeText } from "../../../sources/index.ts";
import { Fig } from "../../figures/fig.tsx";
import { SeverityIcon } from "../../frame/icons.tsx";
import { ShowWorst } from "./show-worst.tsx";
import "./rule-list.css";

/** What does not speak against the shade has no mark: nothing here looks like a pass. */
const MARKS: Partial<Record<RuleOutcome, Severity>> = { failed: "stop", "not-proven": "unproven" };

/** The outcome in the words of a screen; on paper the exact term stands. */
export const OUTCOME_WORDS: Record<RuleOutcome, string> = {
  ...RULE_OUTCOME_NAMES,
  "not-shown-to-fail": "no failure found",
};

/** Rules of one outcome and what this shade comes to in its worst state. */
export function RuleList({ results }: { results: readonly RuleResult[] }) {
  return (
    <ul className="rules">
      {results.map((result) => (
        <Rule key={result.ruleId} result={result} />
      ))}
    </ul>
  );
}

function Rule({ result }: { result: RuleResult }) {
  const mark = MARKS[result.outcome];
  return (
    <li className="rule" data-outcome={result.outcome} data-rule={result.ruleId}>
      <p>
        <b className="rule-outcome">
          {mark ? <SeverityIcon severity={mark} /> : null}
          {OUTCOME_WORDS[result.outcome]}
        </b>{" "}
        {result.words}
      </p>
      <p>
        <RuleFigure result={result} />
        {result.why}
      </p>
      {result.worst && result.outcome !== "does-not-apply" ? <ShowWorst worst={result.worst} /> : null}
      <p className="rule-source">{ruleSourceLine(result)}</p>
    </li>
  );
}

function RuleFigure({ result }: { result: RuleResult }) {
  const { valueText, limitText, figures } = result;
  if (valueText === undefined) return null;
  return (
    <>
      <Fig id={figures?.[0] ?? ""}>{valueText}</Fig>
      {limitText === undefined ? ". " : `, limit ${limitText}. `}
    </>
  );
}

export function ruleSourceLine(rule: RuleSource): string {
  return `${rule.ruleId}, ${STATUS_NAMES[rule.status]}: ${citeText(rule.cite)}. Read as of ${rule.asOf}, ${CONFIDENCE_NAMES[rule.confidence]}; check the current text.`;
}
