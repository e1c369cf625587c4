import { type ReactNode, useId } from "react";
import type { UnitChoice } from "../../units/index.ts";
import { describedBy, FieldFrame } from "./field-frame.tsx";
import { readValue, standInText, unitOf, writeValue } from "./read-write.ts";
import type { WrittenSpec } from "./spec.ts";
import { useDraft } from "./use-draft.ts";

interface WrittenFieldProps {
  spec: WrittenSpec;
  units: UnitChoice;
  currency: string;
  value: unknown;
  /** Whether the schema takes a value here; undefined asks whether it may be left out. */
  takes(value: unknown): boolean;
  /** Called with undefined where the field was emptied; keystrokes of one visit share `joins`. */
  onCommit(value: unknown, joins: string): void;
  readOnly?: boolean;
  /** Shown in place of a value. */
  placeholder?: string | undefined;
  /** What to say where a field that must be filled is empty. */
  needed?: string | undefined;
  pointer?: string;
  origin?: ReactNode;
  below?: ReactNode;
  wide?: boolean;
}

/** A text, a number or a length, typed: taken at each keystroke that the schema takes. */
export function WrittenField(props: WrittenFieldProps) {
  const { spec, units, currency, value, takes, onCommit, readOnly, placeholder, pointer, origin } = props;
  const id = useId();
  const needed = takes(undefined) ? undefined : (props.needed ?? "it cannot be left empty");
  const draft = useDraft<unknown>({
    value,
    write: (known) => writeValue(known, spec, units),
    read: (text) => readValue(text, spec, units, takes),
    commit: onCommit,
    ...(needed === undefined ? {} : { needed }),
  });
  const unit = unitOf(spec, units, currency);
  const shared = {
    id,
    className: "field-input",
    readOnly: readOnly === true,
    placeholder,
    "aria-invalid": draft.error === undefined ? undefined : true,
    "aria-describedby": describedBy(id, origin, draft.error),
    value: draft.shown,
    onFocus: draft.onFocus,
    onChange: draft.onChange,
    onBlur: draft.onBlur,
    onKeyDown: draft.onKeyDown,
    ...(spec.kind === "text" ? { maxLength: spec.most } : {}),
  };
  return (
    <FieldFrame
      id={id}
      pointer={pointer}
      spec={spec}
      error={draft.error}
      origin={origin}
      below={props.below}
      wide={props.wide === true}
    >
      <span className="field-line">
        {spec.kind === "text" && spec.lines ? (
          <textarea rows={2} {...shared} />
        ) : (
          <input
            inputMode={spec.kind === "number" ? "decimal" : "text"}
            autoComplete="off"
            spellCheck={spec.kind === "text"}
            {...shared}
          />
        )}
        {unit === "" ? null : <span className="field-unit">{unit}</span>}
      </span>
    </FieldFrame>
  );
}

/** Words for a field that stands in where nothing was written. */
export function placeholderOf(fallback: unknown, spec: WrittenSpec, units: UnitChoice): string | undefined {
  return fallback === undefined ? undefined : standInText(fallback, spec, units);
}
