import { useState } from "react";
import { PART_TESTS } from "../../diagnose/index.ts";
import { frictionOfPair } from "../../job/index.ts";
import { trimmed } from "../../units/index.ts";
import { Typed } from "../inputs/typed.tsx";
import { askedNumber } from "./asked-number.ts";

/** Tests at the bench for what no label says, and what two readings of a scale come to. */
export function MeasurePart() {
  const [raises, setRaises] = useState("1.5");
  const [lowers, setLowers] = useState("0.7");
  const found = frictionOfPair({ raisesN: askedNumber(raises), lowersN: askedNumber(lowers) });
  return (
    <section className="chapter ask-part" aria-labelledby="measure-part">
      <h2 id="measure-part">Measure your own part</h2>
      {PART_TESTS.map(({ id, title, steps, enter }) => (
        <details key={id} className="more-settings">
          <summary>{title}</summary>
          <ol>
            {steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <p>
            <b>Enter:</b> {enter}
          </p>
        </details>
      ))}
      <h3>Two readings over a quarter turn</h3>
      <div className="fields">
        <Typed
          label="Just raises the weight"
          hint="any unit, the same for both"
          value={raises}
          onChange={setRaises}
        />
        <Typed
          label="Just lets it sink"
          value={lowers}
          onChange={setLowers}
          error={found === undefined ? "two readings above nothing, the first the larger" : undefined}
        />
      </div>
      {found === undefined ? null : (
        <p aria-live="polite">
          Friction {trimmed(found.friction, 2)}, ln(raises / sinks) / π; as a pulley it passes on{" "}
          {trimmed(100 * found.pulleyShare, 0)} % of the pull.
        </p>
      )}
    </section>
  );
}
