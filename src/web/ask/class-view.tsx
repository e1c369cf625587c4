import { useEffect, useMemo, useRef, useState } from "react";
import { type AskedShade, type Lesson, type LessonView, lessonsOf } from "../../answers/index.ts";
import {
  drawForLesson,
  place,
  placeLetter,
  speltDrawing,
  svgNodes,
  withLetters,
} from "../../drawing/index.ts";
import { sumInFigures } from "../../figures/index.ts";
import { citeText } from "../../sources/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { SvgElement } from "../sheets/svg-node.tsx";
import { useBox } from "../sheets/use-box.ts";
import { screenSpelling } from "../spelt/screen-english.ts";
import "./class-view.css";

/** A button that shows the lessons of a shade over the whole screen. */
export function ShowToClass({ facts }: { facts: AskedShade | undefined }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" className="button" disabled={facts === undefined} onClick={() => setOpen(true)}>
        Show as lessons
      </button>
      {open && facts !== undefined ? <ClassView facts={facts} onClose={() => setOpen(false)} /> : null}
    </>
  );
}

/** One lesson at a time, large and with nothing round it: for a class or a stream. */
function ClassView({ facts, onClose }: { facts: AskedShade; onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const lessons = useMemo(() => lessonsOf(facts), [facts]);
  const [at, setAt] = useState(0);
  const lesson = lessons[at];
  useEffect(() => dialog.current?.showModal(), []);
  const last = lessons.length - 1;
  // Keys come faster than drawings are made.
  const turn = (by: number) => setAt((now) => Math.min(last, Math.max(0, now + by)));
  // The page hears the keys: a button that ends loses the focus, and the dialog with it.
  useEffect(() => {
    const onKeyDown = ({ key }: KeyboardEvent) => {
      if (key === "ArrowRight" || key === "PageDown") setAt((now) => Math.min(last, now + 1));
      if (key === "ArrowLeft" || key === "PageUp") setAt((now) => Math.max(0, now - 1));
    };
    addEventListener("keydown", onKeyDown);
    return () => removeEventListener("keydown", onKeyDown);
  }, [last]);
  if (lesson === undefined) return null;
  return (
    <dialog ref={dialog} className="class-view" aria-labelledby="class-title" onClose={onClose}>
      <LessonScreen lesson={lesson} units={facts.units} />
      <nav className="class-turn" aria-label="Lessons">
        <button type="button" className="button" disabled={at === 0} onClick={() => turn(-1)}>
          Back
        </button>
        <span>
          {at + 1} of {lessons.length}
        </span>
        <button type="button" className="button" disabled={at === last} onClick={() => turn(1)}>
          Next
        </button>
        <button type="button" className="button" onClick={() => dialog.current?.close()}>
          Close
        </button>
      </nav>
    </dialog>
  );
}

function LessonScreen({ lesson, units }: { lesson: Lesson; units: UnitChoice }) {
  const { title, question, views, figures, reason, cautions, cite } = lesson;
  const points = views.flatMap((view) => view.points);
  return (
    <>
      <header>
        <h2 id="class-title">{title}</h2>
        <p className="quiet">{question}</p>
      </header>
      <div className="class-drawings">
        {views.map((view) => (
          <ViewPlate key={view.sheet} lesson={lesson} view={view} units={units} />
        ))}
      </div>
      <div className="class-words">
        <ul className="class-points">
          {points.map(({ text }, i) => (
            <li key={text}>
              <b>{placeLetter(i)}</b>
              <span>{text}</span>
            </li>
          ))}
        </ul>
        <dl className="ask-figures">
          {figures.map(({ label, text, working }) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>
                <b>{text}</b> <span className="quiet">{working && sumInFigures(working, units)}</span>
              </dd>
            </div>
          ))}
        </dl>
        <p>{reason}</p>
        {cautions.map(({ id, title: head, text }) => (
          <p key={id} className="class-caution">
            <b>{head}.</b> {text}
          </p>
        ))}
        <p className="finding-source">{citeText(cite)}</p>
      </div>
    </>
  );
}

/** Pixels for one millimetre of paper: smaller words, so that the shade between them is large enough for the back row. */
const PX_PER_MM = 4.3;
const REM_PX = 16;

function ViewPlate({ lesson, view, units }: { lesson: Lesson; view: LessonView; units: UnitChoice }) {
  const room = useRef<HTMLDivElement>(null);
  const box = useBox(room);
  const svg = useMemo(() => {
    if (box === undefined || box.widthPx === 0 || box.heightPx === 0) return undefined;
    const before = lesson.views
      .slice(0, lesson.views.indexOf(view))
      .reduce((sum, { points }) => sum + points.length, 0);
    const drawing = withLetters(
      drawForLesson(view.sheet, { units }, lesson.shade, view.raise),
      view.points.map(({ part }) => part),
      before,
    );
    const pxPerMm = (PX_PER_MM * box.remPx) / REM_PX;
    const bounds = { maxWidthMm: box.widthPx / pxPerMm, maxHeightMm: box.heightPx / pxPerMm };
    const placed = place(speltDrawing(drawing, screenSpelling()), bounds);
    const { tag, attrs, children } = svgNodes(placed);
    // Where its words alone are larger than its room, the whole is made smaller.
    const fit = Math.min(1, bounds.maxWidthMm / placed.widthMm, bounds.maxHeightMm / placed.heightMm);
    const size = { width: placed.widthMm * pxPerMm * fit, height: placed.heightMm * pxPerMm * fit };
    return { tag, attrs: { ...attrs, ...size }, children: children ?? [] };
  }, [box, lesson, view, units]);
  return (
    <div className="class-plate" ref={room}>
      {svg === undefined ? null : <SvgElement node={svg} />}
    </div>
  );
}
