import { memo, type ReactNode, useId } from "react";
import type { UnitChoice } from "../../units/index.ts";
import { useFieldClaim } from "../findings/claims.tsx";
import { editField, useCanEdit, useField, useUnits } from "../state/fields.ts";
import { useCurrency, useParts } from "../state/parts.ts";
import {
  lengthUnit,
  readLength,
  readNumber,
  readText,
  scaleOf,
  standInLength,
  writeLength,
  writeNumber,
} from "./read-write.ts";
import {
  type ChoiceSpec,
  CURRENCY,
  type FieldSpec,
  type FlagSpec,
  type PartSpec,
  type TextSpec,
} from "./spec.ts";
import { useDraft } from "./use-draft.ts";

export interface FieldProps {
  pointer: string;
  spec: FieldSpec;
  /** What stands in where the job holds nothing, as a value of the same kind. */
  fallback?: unknown;
  /** Words for a choice that was not made, where nothing stands in. */
  unset?: string;
  /** What to say where a field that must be filled is empty. */
  needed?: string;
  /** Who decided the value, under the field. */
  origin?: ReactNode;
}

/** One field of the job, by JSON pointer. */
export const Field = memo(function Field(props: FieldProps) {
  const { spec } = props;
  useFieldClaim(props.pointer);
  switch (spec.kind) {
    case "choice":
    case "flag":
    case "part":
      return <SelectField {...props} spec={spec} />;
    case "text":
      return <TextField {...props} spec={spec} />;
    case "length":
      return (
        <DraftField
          {...props}
          unit={(units) => lengthUnit(spec, units)}
          write={(value, units) => (typeof value === "number" ? writeLength(value, spec, units) : "")}
          standIn={(value, units) => (typeof value === "number" ? standInLength(value, spec, units) : "")}
          read={(text, units) => readLength(text, spec, units)}
        />
      );
    case "number":
      return (
        <DraftField
          {...props}
          unit={(units) => scaleOf(spec, units).unit}
          write={(value, units) => (typeof value === "number" ? writeNumber(value, spec, units) : "")}
          read={(text, units) => readNumber(text, spec, units)}
        />
      );
  }
});

interface FrameProps {
  id: string;
  pointer: string;
  spec: FieldSpec;
  error?: string;
  origin?: ReactNode;
  wide?: boolean;
  children: ReactNode;
}

function Frame({ id, pointer, spec, error, origin, wide, children }: FrameProps) {
  return (
    <div
      className={wide ? "field field-wide" : "field"}
      data-pointer={pointer}
      data-invalid={error === undefined ? undefined : true}
    >
      <label htmlFor={id} className="field-label">
        {spec.label}
        {spec.hint === undefined ? null : <span className="field-hint">{spec.hint}</span>}
      </label>
      {children}
      {origin === undefined ? null : (
        <p className="field-origin" id={`${id}-origin`}>
          {origin}
        </p>
      )}
      {error === undefined ? null : (
        <p className="field-error" id={`${id}-error`} role="alert">
          {error}
        </p>
      )}
    </div>
  );
}

interface DraftFieldProps extends FieldProps {
  unit(units: UnitChoice): string;
  write(value: unknown, units: UnitChoice): string;
  /** What the empty field shows in place of a value. */
  standIn?(value: unknown, units: UnitChoice): string;
  read(text: string, units: UnitChoice): ReturnType<typeof readLength>;
}

function DraftField({
  pointer,
  spec,
  fallback,
  needed,
  origin,
  unit,
  write,
  standIn = write,
  read,
}: DraftFieldProps) {
  const id = useId();
  const units = useUnits();
  const value = useField(pointer);
  const currency = useCurrency();
  const draft = useDraft<unknown>({
    value,
    write: (known) => write(known, units),
    read: (text) => read(text, units),
    commit: (next, joins) => editField(pointer, next, spec.label, joins),
    ...(needed === undefined ? {} : { needed }),
  });
  const shownUnit = unit(units).replace(CURRENCY, currency);
  return (
    <Frame id={id} pointer={pointer} spec={spec} error={draft.error} origin={origin}>
      <span className="field-line">
        <input
          id={id}
          className="field-input"
          inputMode={spec.kind === "number" ? "decimal" : "text"}
          autoComplete="off"
          spellCheck={false}
          readOnly={!useCanEdit()}
          placeholder={fallback === undefined ? undefined : standIn(fallback, units)}
          aria-invalid={draft.error === undefined ? undefined : true}
          aria-describedby={describedBy(id, origin, draft.error)}
          value={draft.shown}
          onFocus={draft.onFocus}
          onChange={draft.onChange}
          onBlur={draft.onBlur}
          onKeyDown={draft.onKeyDown}
        />
        {shownUnit === "" ? null : <span className="field-unit">{shownUnit}</span>}
      </span>
    </Frame>
  );
}

function describedBy(id: string, origin: ReactNode, error: string | undefined): string | undefined {
  const ids = [origin === undefined ? "" : `${id}-origin`, error === undefined ? "" : `${id}-error`];
  return ids.join(" ").trim() || undefined;
}

function TextField({ pointer, spec, needed, origin }: FieldProps & { spec: TextSpec }) {
  const id = useId();
  const value = useField(pointer);
  const draft = useDraft<string>({
    value: typeof value === "string" ? value : undefined,
    write: (known) => known,
    read: (text) => readText(text, spec),
    commit: (next, joins) => editField(pointer, next, spec.label, joins),
    ...(spec.required ? { needed: needed ?? "it needs a name" } : {}),
  });
  const shared = {
    id,
    className: "field-input",
    readOnly: !useCanEdit(),
    maxLength: spec.most,
    "aria-invalid": draft.error === undefined ? undefined : true,
    "aria-describedby": describedBy(id, origin, draft.error),
    value: draft.shown,
    onFocus: draft.onFocus,
    onChange: draft.onChange,
    onBlur: draft.onBlur,
    onKeyDown: draft.onKeyDown,
  };
  return (
    <Frame id={id} pointer={pointer} spec={spec} error={draft.error} origin={origin} wide>
      <span className="field-line">
        {spec.lines ? <textarea rows={2} {...shared} /> : <input autoComplete="off" {...shared} />}
      </span>
    </Frame>
  );
}

/** Ids of parts never begin with a hyphen, so these cannot be one. */
const NONE = "-none";
const DEFAULT = "-default";

function SelectField({
  pointer,
  spec,
  fallback,
  unset,
  needed,
  origin,
}: FieldProps & { spec: ChoiceSpec | FlagSpec | PartSpec }) {
  const id = useId();
  const value = useField(pointer);
  const parts = useParts();
  const options = optionsOf(spec, parts);
  const chosen = value === undefined ? DEFAULT : value === null ? NONE : String(value);
  const known = chosen === DEFAULT || chosen === NONE || Object.hasOwn(options, chosen);
  const standIn = fallback === null ? "none" : (options[String(fallback)] ?? "worked out");
  return (
    <Frame id={id} pointer={pointer} spec={spec} origin={origin}>
      <span className="field-line field-select">
        <select
          id={id}
          className="field-input"
          disabled={!useCanEdit()}
          aria-describedby={describedBy(id, origin, undefined)}
          value={chosen}
          onChange={(event) => editField(pointer, decode(event.target.value, spec), spec.label)}
        >
          {needed === undefined ? <option value={DEFAULT}>{unset ?? `${standIn} (default)`}</option> : null}
          {spec.kind === "part" && spec.none !== undefined ? <option value={NONE}>{spec.none}</option> : null}
          {known ? null : <option value={chosen}>{chosen} (not found)</option>}
          {Object.entries(options).map(([key, name]) => (
            <option key={key} value={key}>
              {name}
            </option>
          ))}
        </select>
      </span>
    </Frame>
  );
}

function optionsOf(
  spec: ChoiceSpec | FlagSpec | PartSpec,
  parts: ReturnType<typeof useParts>,
): Record<string, string> {
  if (spec.kind === "choice") return spec.options;
  if (spec.kind === "flag") return { true: spec.yes, false: spec.no };
  const half = parts.halfKnown?.filter(({ kind }) => kind === spec.of) ?? [];
  return Object.fromEntries([
    ...parts[spec.of].map((one) => [one.id, one.name]),
    ...half.map((one) => [one.id, `${one.name} (not measured yet)`]),
  ]);
}

function decode(chosen: string, spec: ChoiceSpec | FlagSpec | PartSpec): unknown {
  if (chosen === DEFAULT) return undefined;
  if (chosen === NONE) return null;
  if (spec.kind === "flag") return chosen === "true";
  return spec.kind === "choice" && spec.numeric ? Number(chosen) : chosen;
}
