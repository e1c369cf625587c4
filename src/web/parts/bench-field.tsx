import { type ReactNode, useId } from "react";
import { canBeMeasured, type KnownBy, type PartEntry, type PartKind } from "../../job/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import {
  lengthUnit,
  type Read,
  readLength,
  readNumber,
  readText,
  scaleOf,
  writeLength,
  writeNumber,
} from "../inputs/read-write.ts";
import { CURRENCY, type FieldSpec } from "../inputs/spec.ts";
import { useDraft } from "../inputs/use-draft.ts";
import { setField, setKnown } from "./bench-store.ts";

export interface BenchFieldProps {
  kind: PartKind;
  part: PartEntry;
  name: string;
  spec: FieldSpec;
  units: UnitChoice;
}

/** One field of a part on the bench, and how it is known. */
export function BenchField(props: BenchFieldProps) {
  const { spec } = props;
  return spec.kind === "choice" || spec.kind === "flag" ? (
    <ChosenField {...props} spec={spec} />
  ) : (
    <WrittenField {...props} />
  );
}

function valueIn({ part, name }: BenchFieldProps): unknown {
  return (part as unknown as Record<string, unknown>)[name];
}

function ChosenField(props: BenchFieldProps & { spec: FieldSpec & { kind: "choice" | "flag" } }) {
  const { kind, part, name, spec } = props;
  const id = useId();
  const value = valueIn(props);
  const options = spec.kind === "flag" ? { true: spec.yes, false: spec.no } : spec.options;
  return (
    <BenchFrame {...props} id={id}>
      <span className="field-line field-select">
        <select
          id={id}
          className="field-input"
          value={value === undefined ? "" : String(value)}
          onChange={({ target }) => {
            const chosen = spec.kind === "flag" ? target.value === "true" : target.value;
            setField(kind, part, name, target.value === "" ? undefined : chosen);
          }}
        >
          <option value="">not known</option>
          {Object.entries(options).map(([key, words]) => (
            <option key={key} value={key}>
              {words}
            </option>
          ))}
        </select>
      </span>
    </BenchFrame>
  );
}

function WrittenField(props: BenchFieldProps) {
  const { kind, part, name, spec, units } = props;
  const id = useId();
  const draft = useDraft<unknown>({
    value: valueIn(props),
    write: (known) => written(known, spec, units),
    read: (text) => readAs(text, spec, units),
    commit: (next) => setField(kind, part, name, next),
    ...(name === "name" ? { needed: "it needs a name" } : {}),
  });
  const unit = unitOf(spec, units);
  const shared = {
    id,
    className: "field-input",
    placeholder: canBeMeasured(name) ? "not known" : undefined,
    "aria-invalid": draft.error === undefined ? undefined : true,
    "aria-describedby": draft.error === undefined ? undefined : `${id}-error`,
    value: draft.shown,
    onFocus: draft.onFocus,
    onChange: draft.onChange,
    onBlur: draft.onBlur,
    onKeyDown: draft.onKeyDown,
  };
  return (
    <BenchFrame {...props} id={id} error={draft.error}>
      <span className="field-line">
        {spec.kind === "text" && spec.lines ? (
          <textarea rows={2} {...shared} />
        ) : (
          <input autoComplete="off" spellCheck={false} {...shared} />
        )}
        {unit === "" ? null : <span className="field-unit">{unit}</span>}
      </span>
    </BenchFrame>
  );
}

function unitOf(spec: FieldSpec, units: UnitChoice): string {
  if (spec.kind === "length") return lengthUnit(spec, units);
  // The bench serves jobs in any currency.
  return spec.kind === "number" ? scaleOf(spec, units).unit.replace(CURRENCY, "money") : "";
}

function written(value: unknown, spec: FieldSpec, units: UnitChoice): string {
  if (typeof value === "number" && spec.kind === "length") return writeLength(value, spec, units);
  if (typeof value === "number" && spec.kind === "number") return writeNumber(value, spec, units);
  return typeof value === "string" ? value : "";
}

function readAs(text: string, spec: FieldSpec, units: UnitChoice): Read<unknown> {
  if (spec.kind === "length") return readLength(text, spec, units);
  if (spec.kind === "number") return readNumber(text, spec, units);
  return spec.kind === "text" ? readText(text, spec) : { ok: true, value: text };
}

interface BenchFrameProps extends BenchFieldProps {
  id: string;
  error?: string | undefined;
  children: ReactNode;
}

function BenchFrame({ id, error, children, ...props }: BenchFrameProps) {
  const { spec, name } = props;
  const wide = spec.kind === "text" && spec.lines === true;
  return (
    <div
      className={wide ? "field field-wide" : "field"}
      data-invalid={error === undefined ? undefined : true}
    >
      <label htmlFor={id} className="field-label">
        {spec.label}
        {spec.hint === undefined ? null : <span className="field-hint">{spec.hint}</span>}
      </label>
      {children}
      {canBeMeasured(name) && valueIn(props) !== undefined ? <HowKnown {...props} /> : null}
      {error === undefined ? null : (
        <p className="field-error" id={`${id}-error`} role="alert">
          {error}
        </p>
      )}
    </div>
  );
}

const HOW: Record<KnownBy, string> = {
  measured: "measured",
  stated: "stated by the seller",
  "not-known": "not known",
};

function HowKnown({ kind, part, name, spec }: BenchFieldProps) {
  const known = (part as { known?: Record<string, KnownBy> }).known?.[name];
  return (
    <select
      className="bench-known"
      aria-label={`${spec.label}: how it is known`}
      value={known ?? "stated"}
      onChange={({ target }) => setKnown(kind, part, name, target.value as KnownBy)}
    >
      {Object.entries(HOW).map(([how, words]) => (
        <option key={how} value={how}>
          {words}
        </option>
      ))}
    </select>
  );
}
