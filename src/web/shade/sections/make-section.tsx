import { Link } from "wouter";
import type { Window } from "../../../job/index.ts";
import { CHAPTER_NAMES, CHAPTERS } from "../../../shade-plan/index.ts";
import { useCanEdit, useField } from "../../state/fields.ts";
import { GetWorkbook } from "../../workbook/get-workbook.tsx";
import { Section } from "../section.tsx";
import { useShade } from "../shade-context.tsx";
import { tickStep } from "../ticks.ts";

export function MakeSection() {
  const { job, plan, window, pointer } = useShade();
  const mine = useCanEdit();
  const done = new Set(useField(`${pointer}/ticks`) as Window["ticks"]);
  const ticked = plan.steps.filter((step) => done.has(step.id)).length;
  return (
    <Section
      id="make"
      sentence={
        <>
          {plan.steps.length} steps with this shade’s own numbers, {ticked === 0 ? "none" : ticked} of them
          done. <Link href={`/job/${job.id}/${window.id}/bench`}>Take it to the bench</Link>, one step at a
          time.
        </>
      }
    >
      <GetWorkbook shade={{ id: window.id, name: window.name }} />
      {CHAPTERS.map((chapter) => {
        const steps = plan.steps.filter((step) => step.chapter === chapter);
        return steps.length === 0 ? null : (
          <div key={chapter}>
            <h3>{CHAPTER_NAMES[chapter]}</h3>
            <ol className="steps">
              {steps.map((step) => (
                <li key={step.id}>
                  <label className="step-tick">
                    <input
                      type="checkbox"
                      checked={done.has(step.id)}
                      disabled={!mine}
                      onChange={(event) => tickStep(window.id, step.id, event.target.checked)}
                    />
                    <span>{step.title}</span>
                  </label>
                </li>
              ))}
            </ol>
          </div>
        );
      })}
    </Section>
  );
}
