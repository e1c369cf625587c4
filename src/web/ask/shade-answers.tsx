import { useCallback, useMemo, useState } from "react";
import { shadeFacts } from "../../answers/index.ts";
import { Typed } from "../inputs/typed.tsx";
import { useShade } from "../shade/shade-context.tsx";
import { sheetTitle } from "../sheets/sheet-tabs.tsx";
import { showSheet } from "../sheets/strip.ts";
import { FoundAnswers } from "./answers.tsx";
import { sheetOfQuestion } from "./sheet-of-question.ts";

/** A question in one’s own words, answered from the shade on the page; what a drawing shows opens it. */
export function ShadeAnswers() {
  const [words, setWords] = useState("");
  return (
    <>
      <Typed label="Your question about this shade" value={words} onChange={setWords} />
      {words.trim() === "" ? null : <OfShade words={words} ask={setWords} />}
    </>
  );
}

function OfShade({ words, ask }: { words: string; ask: (words: string) => void }) {
  const { job, plan, place } = useShade();
  const facts = useMemo(() => shadeFacts(job, place.room, place.window, plan), [job, place, plan]);
  const { takeUp } = plan.lift;
  const shows = useCallback(
    (id: string) => {
      const sheet = sheetOfQuestion(id, takeUp);
      if (sheet === undefined) return null;
      return (
        <button type="button" className="button button-small" onClick={() => showSheet(sheet)}>
          See it on the drawing: {sheetTitle(sheet, takeUp)}
        </button>
      );
    },
    [takeUp],
  );
  return facts === undefined ? null : <FoundAnswers words={words} facts={facts} ask={ask} shows={shows} />;
}
