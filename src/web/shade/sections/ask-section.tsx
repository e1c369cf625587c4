import { lazy, Suspense } from "react";
import { Causes } from "../../ask/causes.tsx";
import { Lessons } from "../../ask/lessons.tsx";
import { Level } from "../../ask/level.tsx";
import "../../ask/ask.css";
import { More } from "../../frame/more.tsx";
import { Section } from "../section.tsx";

const ShadeAnswers = lazy(() =>
  import("../../ask/shade-answers.tsx").then((module) => ({ default: module.ShadeAnswers })),
);

/** Questions in one’s own words; when it hangs and something is wrong, symptoms, causes by this shade's numbers, and the levelling of its hem. */
export function AskSection() {
  return (
    <Section
      id="ask"
      sentence={<>Ask about this shade in your own words, or what is wrong with one that hangs.</>}
    >
      <Suspense fallback={null}>
        <ShadeAnswers />
      </Suspense>
      <Causes />
      <More id="level-hem" title="Level the hem">
        <Level />
      </More>
      <Lessons />
    </Section>
  );
}
