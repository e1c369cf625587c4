import { type ReactNode, useState } from "react";
import { SECTIONS, type SectionId, sectionNumber } from "../sections/sections.ts";
import { openSection, usePlanner } from "../state/store.ts";
import "./chapter.css";

export interface ChapterProps {
  id: SectionId;
  /** The chapter in one sentence, its figures ready to press. */
  sentence: ReactNode;
  /** What stands under the sentence while the rest is closed. */
  folded?: ReactNode;
  children: ReactNode;
}

/** A section of a page that folds away to the sentence that states it. */
export function Chapter({ id, sentence, folded, children }: ChapterProps) {
  const open = usePlanner((planner) => planner.view.open[id] === true);
  // What was typed and cannot be read must not be lost when the chapter is folded away.
  const [everOpen, setEverOpen] = useState(open);
  if (open && !everOpen) setEverOpen(true);
  return (
    <section className="chapter" id={id} aria-labelledby={`${id}-title`} data-open={open || undefined}>
      <h2 className="chapter-title" id={`${id}-title`}>
        <button
          type="button"
          aria-expanded={open}
          aria-controls={`${id}-body`}
          onClick={() => openSection(id, !open)}
        >
          <span className="chapter-number" aria-hidden="true">
            {sectionNumber(id)}
          </span>
          <span>{SECTIONS[id].title}</span>
          <span className="chapter-toggle" aria-hidden="true">
            {open ? "close" : "edit"}
          </span>
        </button>
      </h2>
      <div className="chapter-sentence">{sentence}</div>
      {open ? null : folded}
      <div className="chapter-body" id={`${id}-body`} hidden={!open}>
        {everOpen ? children : null}
      </div>
    </section>
  );
}
