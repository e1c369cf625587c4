import { useId } from "react";
import { canBeMeasured, fieldAccepts, type KnownBy, type PartEntry, type PartKind } from "../../job/index.ts";
import type { UnitChoice } from "../../units/index.ts";
import { FieldFrame } from "../inputs/field-frame.tsx";
import type { ChoiceSpec, FieldSpec, FlagSpec } from "../inputs/spec.ts";
import { WrittenField } from "../inputs/written-field.tsx";
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
  const { kind, part, name, spec, units } = props;
  if (spec.kind === "choice" || spec.kind === "flag") return <ChosenField {...props} spec={spec} />;
  // The bench lies before any job: no field of it chooses among a job's parts.
  if (spec.kind === "part") throw new Error(`invalid field of a part: ${name}`);
  return (
    <WrittenField
      spec={spec}
      units={units}
      // The bench serves jobs in any currency.
      currency="money"
      value={valueIn(props)}
      takes={(value) => fieldAccepts(placeInJob(kind, name), value)}
      onCommit={(next) => setField(kind, part, name, next)}
      placeholder={canBeMeasured(name) ? "not known" : undefined}
      needed="it needs a name"
      below={<HowKnown {...props} />}
      wide={spec.kind === "text" && spec.lines === true}
    />
  );
}

/** Where a job would hold the field: the bench takes what a job takes. */
function placeInJob(kind: PartKind, name: string): string[] {
  return kind === "cloths" ? [kind, "0", name] : ["hardware", kind, "0", name];
}

function valueIn({ part, name }: BenchFieldProps): unknown {
  return (part as unknown as Record<string, unknown>)[name];
}

function ChosenField(props: BenchFieldProps & { spec: ChoiceSpec | FlagSpec }) {
  const { kind, part, name, spec } = props;
  const id = useId();
  const value = valueIn(props);
  const options = spec.kind === "flag" ? { true: spec.yes, false: spec.no } : spec.options;
  return (
    <FieldFrame id={id} spec={spec} below={<HowKnown {...props} />}>
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
    </FieldFrame>
  );
}

const HOW: Record<KnownBy, string> = {
  measured: "measured",
  stated: "stated by the seller",
  "not-known": "not known",
};

function HowKnown(props: BenchFieldProps) {
  const { kind, part, name, spec } = props;
  if (!canBeMeasured(name) || valueIn(props) === undefined) return null;
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
