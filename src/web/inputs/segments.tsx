import { Label, Radio, RadioGroup } from "react-aria-components/RadioGroup";
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
  return (
    <RadioGroup
      value={value ?? null}
      onChange={(chosen) => onChange(chosen as K)}
      isReadOnly={readOnly}
      orientation="horizontal"
    >
      <Label className={quiet ? "hidden-words" : "segments-label"}>{label}</Label>
      <div className="segments">
        {Object.entries<string>(options).map(([key, name]) => (
          <Radio key={key} value={key} className="segment">
            {name}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
