import { parseJSONPointer } from "immutable-json-patch";
import { memo, type ReactNode, useId } from "react";
import { fieldAccepts } from "../../job/index.ts";
import { useFieldClaim } from "../findings/claims.tsx";
import { useEnglish } from "../state/english.ts";
import { editField, useCanEdit, useField, useUnits } from "../state/fields.ts";
import { useCurrency, useParts } from "../state/parts.ts";
import { describedBy, FieldFrame } from "./field-frame.tsx";
import type { ChosenSpec, FieldSpec, WrittenSpec } from "./spec.ts";
import { placeholderOf, WrittenField } from "./written-field.tsx";

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
  useEnglish();
  const { spec } = props;
  useFieldClaim(props.pointer);
  return spec.kind === "choice" || spec.kind === "flag" || spec.kind === "part" ? (
    <SelectField {...props} spec={spec} />
  ) : (
    <TypedField {...props} spec={spec} />
  );
});

function TypedField({ pointer, spec, fallback, needed, origin }: FieldProps & { spec: WrittenSpec }) {
  const units = useUnits();
  const segments = parseJSONPointer(pointer);
  // One of a list goes from it where it is emptied, unless the page says that it is needed.
  const mayGo = needed === undefined && /^\d+$/.test(segments.at(-1) ?? "");
  return (
    <WrittenField
      pointer={pointer}
      spec={spec}
      units={units}
      currency={useCurrency()}
      value={useField(pointer)}
      takes={(value) => (value === undefined && mayGo) || fieldAccepts(segments, value)}
      onCommit={(next, joins) => editField(pointer, next, spec.label, joins)}
      readOnly={!useCanEdit()}
      placeholder={placeholderOf(fallback, spec, units)}
      needed={needed}
      origin={origin}
      wide={spec.kind === "text"}
    />
  );
}

/** Ids of parts never begin with a hyphen, so these cannot be one. */
const NONE = "-none";
const DEFAULT = "-default";

function SelectField({ pointer, spec, fallback, unset, needed, origin }: FieldProps & { spec: ChosenSpec }) {
  const id = useId();
  const value = useField(pointer);
  const parts = useParts();
  const options = optionsOf(spec, parts);
  const chosen = value === undefined ? DEFAULT : value === null ? NONE : String(value);
  const known = chosen === DEFAULT || chosen === NONE || Object.hasOwn(options, chosen);
  const standIn = fallback === null ? "none" : (options[String(fallback)] ?? "worked out");
  return (
    <FieldFrame id={id} pointer={pointer} spec={spec} origin={origin}>
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
    </FieldFrame>
  );
}

function optionsOf(spec: ChosenSpec, parts: ReturnType<typeof useParts>): Record<string, string> {
  if (spec.kind === "choice") return spec.options;
  if (spec.kind === "flag") return { true: spec.yes, false: spec.no };
  const half = parts.halfKnown?.filter(({ kind }) => kind === spec.of) ?? [];
  return Object.fromEntries([
    ...parts[spec.of].map((one) => [one.id, one.name]),
    ...half.map((one) => [one.id, `${one.name} (not measured yet)`]),
  ]);
}

function decode(chosen: string, spec: ChosenSpec): unknown {
  if (chosen === DEFAULT) return undefined;
  if (chosen === NONE) return null;
  if (spec.kind === "flag") return chosen === "true";
  return spec.kind === "choice" && spec.numeric ? Number(chosen) : chosen;
}
