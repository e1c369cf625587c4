import { RULE_OUTCOMES, type RuleOutcome, type SafetyReview } from "../../../shade-plan/index.ts";
import { counted } from "../../../words/index.ts";
import { OUTCOME_WORDS, RuleList, ruleSourceLine } from "./rule-list.tsx";

/** Folded away until asked for: these do not speak against the shade. */
const FOLDED: ReadonlySet<RuleOutcome> = new Set(["not-shown-to-fail", "does-not-apply"]);

/** Every rule that was read for this shade, the heaviest first, and the tests that only hands can do. */
export function Review({ review }: { review: SafetyReview }) {
  return (
    <>
      <p>{review.readAs}</p>
      {RULE_OUTCOMES.map((outcome) => (
        <Outcome key={outcome} outcome={outcome} review={review} />
      ))}
      {review.tests.length > 0 ? <Tests tests={review.tests} /> : null}
      {review.listed.length > 0 ? <Listed listed={review.listed} /> : null}
    </>
  );
}

function Outcome({ outcome, review }: { outcome: RuleOutcome; review: SafetyReview }) {
  const results = review.results.filter((result) => result.outcome === outcome);
  if (results.length === 0) return null;
  const title = `${counted(results.length, "rule")}: ${OUTCOME_WORDS[outcome]}`;
  if (FOLDED.has(outcome)) {
    return (
      <details className="more-settings">
        <summary>{title}</summary>
        {outcome === "not-shown-to-fail" ? (
          <p className="quiet small">
            By the figures of this plan these are not shown to fail. That proves nothing of the shade as made.
          </p>
        ) : null}
        <RuleList results={results} />
      </details>
    );
  }
  return (
    <div>
      <h3>{title}</h3>
      <RuleList results={results} />
    </div>
  );
}

function Tests({ tests }: { tests: SafetyReview["tests"] }) {
  return (
    <div>
      <h3>Tests that only hands can do</h3>
      <dl className="physical-tests">
        {tests.map((test) => (
          <div key={test.id}>
            <dt>{test.title}</dt>
            <dd>{test.text}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function Listed({ listed }: { listed: SafetyReview["listed"] }) {
  return (
    <details className="more-settings">
      <summary>
        {counted(listed.length, "rule")} listed without a result: no longer in force, or not verified
      </summary>
      <ul className="rules">
        {listed.map((rule) => (
          <li key={rule.ruleId} className="rule">
            <p>{rule.words}</p>
            <p className="rule-source">{ruleSourceLine(rule)}</p>
          </li>
        ))}
      </ul>
    </details>
  );
}
