import { Causes } from "../../ask/causes.tsx";
import { Level } from "../../ask/level.tsx";
import "../../ask/ask.css";
import { Section } from "../section.tsx";

/** When it hangs and something is wrong: symptoms, causes by this shade's numbers, and the levelling of its hem. */
export function AskSection() {
  return (
    <Section
      number={8}
      id="ask"
      title="Ask"
      stages={[]}
      sentence={<>Something is wrong with it, or its hem does not hang level: ask what it can be.</>}
    >
      <Causes />
      <details className="more-settings">
        <summary>Level the hem</summary>
        <Level />
      </details>
    </Section>
  );
}
