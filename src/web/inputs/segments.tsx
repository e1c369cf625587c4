import { useId } from "react";
import "./field.css";

export interface SegmentsProps<K extends string> {
  label: string;
  /** The label is for screen readers alone. */
  quiet?: boolean;
  options: Readonly<Record<K, string>>;
  /** Undefined where nothing was chosen yet. */
  value: K | undefined;
  onChange(value: K): void;
  readOnly?: boolean;
}

/** A few choices side by side, one of them taken. */
export function Segments<K extends string>(props: SegmentsProps<K>) {
  const { label, quiet, options, value, onChange, readOnly = false } = props;
  const name = useId();
  return (
    <fieldset disabled={readOnly}>
      <legend className={quiet ? "hidden-words" : "segments-label"}>{label}</legend>
      <span className="segments">
        {(Object.entries(options) as [K, string][]).map(([key, words]) => (
          <label key={key} className="segment">
            <input
              type="radio"
              className="segment-input"
              name={name}
              checked={key === value}
              onChange={() => onChange(key)}
            />
            {words}
          </label>
        ))}
      </span>
    </fieldset>
  );
}
