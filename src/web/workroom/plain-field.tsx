import { type HTMLInputTypeAttribute, useId } from "react";

interface PlainFieldProps {
  label: string;
  value: string;
  onChange(value: string): void;
  hint?: string;
  type?: HTMLInputTypeAttribute;
  autoComplete?: string;
  most?: number;
}

/** One line to type in that is no field of a job. */
export function PlainField({
  label,
  value,
  onChange,
  hint,
  type = "text",
  autoComplete = "off",
  most = 120,
}: PlainFieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
        {hint === undefined ? null : <span className="field-hint">{hint}</span>}
      </label>
      <span className="field-line">
        <input
          id={id}
          className="field-input"
          type={type}
          autoComplete={autoComplete}
          spellCheck={false}
          autoCapitalize="none"
          maxLength={most}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
      </span>
    </div>
  );
}

interface PlainChoiceProps<Value extends string> {
  label: string;
  /** Whose it is, for who hears the label alone. */
  of?: string;
  /** The label is heard, not seen: the column says it. */
  isHidden?: boolean;
  options: Readonly<Record<Value, string>>;
  value: Value;
  onChange(value: Value): void;
  disabled?: boolean;
}

/** One of a few, chosen from a list. */
export function PlainChoice<Value extends string>({
  label,
  of,
  isHidden = false,
  options,
  value,
  onChange,
  disabled = false,
}: PlainChoiceProps<Value>) {
  const id = useId();
  return (
    <div className="field">
      <label className={isHidden ? "hidden-words" : "field-label"} htmlFor={id}>
        {label}
        {of === undefined ? null : <span className="hidden-words">, {of}</span>}
      </label>
      <span className="field-line">
        <select
          id={id}
          className="field-input"
          value={value}
          disabled={disabled}
          onChange={(event) => onChange(event.target.value as Value)}
        >
          {(Object.entries(options) as [Value, string][]).map(([key, words]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
