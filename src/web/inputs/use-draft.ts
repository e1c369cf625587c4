import { useEffect, useId, useRef, useState } from "react";
import { countUnread } from "../state/store.ts";
import type { Read } from "./read-write.ts";

interface Draft<V> {
  /** What the job holds; undefined where it holds nothing. */
  value: V | undefined;
  write(value: V): string;
  read(text: string): Read<V>;
  /** Called with undefined where an optional field was emptied. */
  commit(value: V | undefined, joins: string): void;
  /** What to say where a field that must be filled is empty. */
  needed?: string;
}

/**
 * Text being written, beside the value that it last stood for. The job follows each keystroke that can be read;
 * what cannot be read stays as it was written, and the reason is reported once the field is left.
 */
export function useDraft<V>({ value, write, read, commit, needed }: Draft<V>) {
  const [text, setText] = useState<string>();
  const [left, setLeft] = useState(false);
  const committed = useRef(value);
  const visit = useRef("");
  const id = useId();

  // The value changed from elsewhere (undo, a remedy, another tab): what was written is out of date.
  if (text !== undefined && !Object.is(value, committed.current)) {
    committed.current = value;
    setText(undefined);
    setLeft(false);
  }

  const empty = text !== undefined && text.trim() === "";
  const reading: Read<V> | undefined = text === undefined || empty ? undefined : read(text);
  const reason = empty ? needed : reading?.ok === false ? reading.reason : undefined;

  // What cannot be read is not in the job, so that nobody may call it saved.
  const isUnread = reason !== undefined;
  useEffect(() => {
    if (!isUnread) return;
    countUnread(1);
    return () => countUnread(-1);
  }, [isUnread]);

  const accept = (written: string) => {
    setText(written);
    const next = written.trim() === "" ? undefined : read(written);
    if (next === undefined ? needed !== undefined : !next.ok) return;
    const accepted = next?.ok ? next.value : undefined;
    if (Object.is(accepted, value)) return;
    committed.current = accepted;
    commit(accepted, visit.current);
  };

  return {
    shown: text ?? (value === undefined ? "" : write(value)),
    error: left ? reason : undefined,
    onFocus: () => {
      visit.current = `${id}-${performance.now()}`;
      committed.current = value;
    },
    onChange: (event: { target: { value: string } }) => accept(event.target.value),
    onBlur: () => {
      if (reason === undefined) setText(undefined);
      setLeft(reason !== undefined);
    },
    onKeyDown: (event: { key: string; stopPropagation(): void }) => {
      if (event.key === "Enter") setLeft(reason !== undefined);
      if (event.key === "Escape" && text !== undefined) {
        event.stopPropagation();
        setText(undefined);
        setLeft(false);
      }
    },
  };
}
