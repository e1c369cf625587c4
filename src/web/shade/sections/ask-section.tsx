import { Causes } from "../../ask/causes.tsx";
import { Lessons } from "../../ask/lessons.tsx";
import { Level } from "../../ask/level.tsx";
import "../../ask/ask.css";
import { More } from "../../frame/more.tsx";
import { Section } from "../section.tsx";

/** When it hangs and something is wrong: symptoms, causes by this shade's numbers, and the levelling of its hem. */
export function AskSection() {
  return (
    <Section
      id="ask"
      sentence={<>Something is wrong with it, or its hem does not hang level: ask what it can be.</>}
    >
      <Causes />
      <More id="level-hem" title="Level the hem">
        <Level />
      </More>
      <Lessons />
    </Section>
  );
}
