import { memo, type ReactNode, useEffect, useRef, useState } from "react";
import { Link } from "wouter";
import { counted } from "../../words/index.ts";
import type { Waiting } from "../sections/what-is-open.ts";
import { SeverityIcon } from "./icons.tsx";
import "./rail.css";
import { useEnglish } from "../state/english.ts";

export interface RailEntry {
  key: string;
  number?: number;
  title: string;
  waiting?: Waiting | undefined;
  /** How far it is, where it is counted otherwise. */
  note?: string;
  /** Leads to another page; else `onPress`. */
  href?: string;
  /** Called with its key; the same function while the page stands. */
  onPress?(key: string): void;
  /** Its section is open on this page. */
  open?: boolean;
}

export interface RailGroup {
  title: string;
  entries: readonly RailEntry[];
}

export interface NextThing {
  words: string;
  href?: string;
  onPress?(): void;
}

interface RailProps {
  groups: readonly RailGroup[];
  /** What to do next, at one press; undefined where nothing waits. */
  next: NextThing | undefined;
  /** What else is done from anywhere: beside a wide page, and in the list of a small one. */
  children?: ReactNode;
}

/**
 * The sections of job and window and what waits in each: at the edge of a wide page, like the index of a pattern
 * book; on a small one a list that comes up from below, under the thumb.
 */
export function Rail({ groups, next, children }: RailProps) {
  const [up, setUp] = useState(false);
  const opener = useRef<HTMLButtonElement>(null);
  const list = useRef<HTMLElement>(null);
  useEffect(() => {
    if (up) list.current?.querySelector<HTMLElement>("[data-open], a, button")?.focus();
  }, [up]);
  const close = () => {
    setUp(false);
    opener.current?.focus();
  };
  return (
    <div className="rail screen-only" data-up={up || undefined}>
      <div className="rail-next">
        <button
          ref={opener}
          type="button"
          className="button rail-opener"
          aria-expanded={up}
          aria-controls="rail-list"
          onClick={() => setUp(!up)}
        >
          Sections
        </button>
        {next === undefined ? <p className="rail-done">Nothing waits here.</p> : <Next next={next} />}
      </div>
      {children === undefined ? null : <div className="rail-else">{children}</div>}
      <nav
        ref={list}
        id="rail-list"
        className="rail-list"
        aria-label="Sections"
        onKeyDown={(event) => {
          if (event.key === "Escape" && up) close();
        }}
        onClick={() => setUp(false)}
      >
        {groups.map(({ title, entries }) => (
          <div key={title} className="rail-group">
            <h2 className="rail-group-title">{title}</h2>
            <ul>
              {entries.map((entry) => (
                <li key={entry.key}>
                  <Entry {...entryProps(entry)} />
                </li>
              ))}
            </ul>
          </div>
        ))}
      </nav>
    </div>
  );
}

function Next({ next: { words, href, onPress } }: { next: NextThing }) {
  const inside = (
    <>
      <span className="rail-next-word">Next</span> <span className="rail-next-what">{words}</span>
    </>
  );
  return href === undefined ? (
    <button type="button" className="button button-main rail-next-go" onClick={onPress}>
      {inside}
    </button>
  ) : (
    <Link href={href} className="button button-main rail-next-go">
      {inside}
    </Link>
  );
}

type EntryProps = Omit<RailEntry, "key" | "waiting"> & Partial<Waiting> & { name: string };

/** Plain values only, so that they can be told to be the same. */
function entryProps({ key, waiting, ...rest }: RailEntry): EntryProps {
  return { ...rest, ...waiting, name: key };
}

/** Drawn anew only when what it says changes: the index is long, and an edit changes little of it. */
const Entry = memo(function Entry(props: EntryProps) {
  useEnglish();
  const { name, number, title, note, href, onPress, open, stop = 0, fix = 0, questions = 0 } = props;
  const inside: ReactNode = (
    <>
      <span className="rail-number" aria-hidden="true">
        {number}
      </span>
      <span className="rail-title">{title}</span>
      {note === undefined ? null : <span className="rail-note">{note}</span>}
      <Mark stop={stop} fix={fix} questions={questions} />
    </>
  );
  const press = () => onPress?.(name);
  return href === undefined ? (
    <button type="button" className="rail-entry" data-open={open || undefined} onClick={press}>
      {inside}
      {open ? <span className="hidden-words">, open</span> : null}
    </button>
  ) : (
    <Link href={href} className="rail-entry" onClick={press}>
      {inside}
    </Link>
  );
});

/** The gravest thing that waits, and how many of its kind. */
function Mark({ stop, fix, questions }: Waiting) {
  const words = [
    stop > 0 ? `${stop} to stop for` : "",
    fix > 0 ? `${fix} to fix` : "",
    questions > 0 ? counted(questions, "question") : "",
  ].filter(Boolean);
  if (words.length === 0) return null;
  const kind = stop > 0 ? "stop" : fix > 0 ? "fix" : "question";
  return (
    <span className="rail-mark" data-kind={kind}>
      <span aria-hidden="true">
        {kind === "question" ? `${questions} ?` : <SeverityIcon severity={kind} />}
        {kind === "question" ? null : stop + fix}
      </span>
      <span className="hidden-words">, {words.join(", ")}</span>
    </span>
  );
}
