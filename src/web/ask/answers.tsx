import { type ReactNode, useId, useMemo, useState } from "react";
import {
  type AskedShade,
  findQuestions,
  QUESTIONS,
  type QuestionCard,
  shadeFacts,
} from "../../answers/index.ts";
import { citeText } from "../../sources/index.ts";
import { SYSTEM_DEFAULT_RULER } from "../../units/index.ts";
import { lengthUnit } from "../inputs/read-write.ts";
import { Typed } from "../inputs/typed.tsx";
import { usePreferences } from "../state/preferences.ts";
import { LENGTH_KEYS, NUMBER_SPECS, readNumbers, type TypedTexts } from "./answer-numbers.ts";
import { ShowToClass } from "./class-view.tsx";

/** Answers that are shown before one asks for more. */
const MOST = 3;

/** A question in one’s own words, answered from a few typed numbers. */
export function Answers() {
  const [words, setWords] = useState("");
  const [typed, setTyped] = useState<TypedTexts>({});
  const system = usePreferences((preferences) => preferences.system);
  const units = useMemo(() => ({ system, ruler: SYSTEM_DEFAULT_RULER[system] }), [system]);
  const { texts, errors, job } = useMemo(() => readNumbers(typed, units), [typed, units]);
  const facts = useMemo(() => (job === undefined ? undefined : shadeFacts(job, 0, 0)), [job]);
  const set = (key: keyof TypedTexts) => (text: string) => setTyped({ ...typed, [key]: text });
  return (
    <section className="chapter ask-part" aria-labelledby="answers">
      <h2 id="answers">What do you want to know?</h2>
      <Typed label="Your question, in your own words" value={words} onChange={setWords} />
      <details className="more-settings" open={Object.keys(errors).length > 0 || undefined}>
        <summary>
          For a shade of {texts.widthMm} × {texts.lengthMm} {lengthUnit(NUMBER_SPECS.widthMm, units)}
        </summary>
        <div className="fields">
          {LENGTH_KEYS.map((key) => (
            <Typed
              key={key}
              label={NUMBER_SPECS[key].label}
              unit={lengthUnit(NUMBER_SPECS[key], units)}
              value={texts[key]}
              onChange={set(key)}
              error={errors[key]}
            />
          ))}
          <Typed
            label="Cloth, weight"
            unit="g/m²"
            value={texts.massGsm}
            onChange={set("massGsm")}
            error={errors.massGsm}
          />
        </div>
      </details>
      <p>
        <ShowToClass facts={facts} />
      </p>
      {words.trim() === "" ? (
        <AllQuestions ask={setWords} />
      ) : facts === undefined ? null : (
        <FoundAnswers words={words} facts={facts} ask={setWords} />
      )}
    </section>
  );
}

function AllQuestions({ ask }: { ask: (words: string) => void }) {
  return <Questions title="Questions that have an answer" cards={QUESTIONS} ask={ask} />;
}

function Questions({
  title,
  cards,
  ask,
}: {
  title: string;
  cards: readonly QuestionCard[];
  ask: (words: string) => void;
}) {
  const id = useId();
  return (
    <>
      <h3 id={id}>{title}</h3>
      <ul className="ask-questions" aria-labelledby={id}>
        {cards.map(({ id: key, question }) => (
          <li key={key}>
            <button type="button" onClick={() => ask(question)}>
              {question}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

interface FoundAnswersProps {
  words: string;
  facts: AskedShade;
  ask: (words: string) => void;
  /** What stands below the answer to a question: the way to its drawing. */
  shows?: (id: string) => ReactNode;
}

/** Answers to what was asked, the nearest first, and what else is asked. */
export function FoundAnswers({ words, facts, ask, shows }: FoundAnswersProps) {
  const found = useMemo(() => findQuestions(words), [words]);
  if (found.length === 0)
    return (
      <>
        <p role="status">Nothing here answers that. Other words may find it.</p>
        <AllQuestions ask={ask} />
      </>
    );
  const shown = found.slice(0, found[0]?.question === words ? 1 : MOST);
  const more = found.slice(shown.length, shown.length + 6);
  return (
    <>
      <div className="ask-answers" aria-live="polite">
        {shown.map((card) => (
          <AnswerNote key={card.id} card={card} facts={facts} below={shows?.(card.id)} />
        ))}
      </div>
      {more.length === 0 ? null : <Questions title="Also asked" cards={more} ask={ask} />}
    </>
  );
}

interface AnswerNoteProps {
  card: QuestionCard;
  facts: AskedShade;
  below: ReactNode;
}

function AnswerNote({ card, facts, below }: AnswerNoteProps) {
  const { text, figures, reason, cite } = useMemo(() => card.answer(facts), [card, facts]);
  return (
    <article className="ask-answer" data-takes data-question={card.id}>
      <h3>{card.question}</h3>
      <p>
        <b>{text}</b>
      </p>
      {figures.length === 0 ? null : (
        <dl className="ask-figures">
          {figures.map(({ label, text: figure }) => (
            <div key={`${label} ${figure}`}>
              <dt>{label}</dt>
              <dd>{figure}</dd>
            </div>
          ))}
        </dl>
      )}
      <p>{reason}</p>
      <p className="finding-source">{citeText(cite)}</p>
      {below}
    </article>
  );
}
