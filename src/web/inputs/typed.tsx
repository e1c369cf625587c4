import { useId } from "react";
import "./field.css";

interface TypedProps {
  label: string;
  hint?: string;
  unit?: string;
  value: string;
  onChange(text: string): void;
  /** Why the text cannot be read. */
  error?: string;
}

/** A number or a length that belongs to a question, not to the job. */
export function Typed({ label, hint, unit, value, onChange, error }: TypedProps) {
  const id = useId();
  return (
    <div className="field" data-invalid={error === undefined ? undefined : true}>
      <label htmlFor={id} className="field-label">
        {label}
        {hint === undefined ? null : <span className="field-hint">{hint}</span>}
      </label>
      <span className="field-line">
        <input
          id={id}
          className="field-input"
          autoComplete="off"
          spellCheck={false}
          aria-invalid={error === undefined ? undefined : true}
          aria-describedby={error === undefined ? undefined : `${id}-error`}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
        {unit === undefined ? null : <span className="field-unit">{unit}</span>}
      </span>
      {error === undefined ? null : (
        <p className="field-error" id={`${id}-error`} role="alert">
          {error}
        </p>
      )}
    </div>
  );
}
