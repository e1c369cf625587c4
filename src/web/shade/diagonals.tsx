import { useState } from "react";
import { useFieldClaim } from "../findings/claims.tsx";
import { FieldGroup } from "../findings/field-findings.tsx";
import { lengthUnit, readLength, writeLength } from "../inputs/read-write.ts";
import { span } from "../inputs/spec.ts";
import { useDraft } from "../inputs/use-draft.ts";
import { editField, useCanEdit, useField, useUnits } from "../state/fields.ts";

type Pair = [number | undefined, number | undefined];

const NAMES = ["Diagonal, top left to bottom right", "Diagonal, top right to bottom left"] as const;

/** Both diagonals: the job holds them together or not at all, so the first waits here for the second. */
export function Diagonals({ pointer }: { pointer: string }) {
  const held = useField(pointer) as [number, number] | undefined;
  const [waiting, setWaiting] = useState<Pair>([undefined, undefined]);
  const pair: Pair = held ?? waiting;
  const change = (at: 0 | 1, value: number | undefined, joins: string) => {
    const next: Pair = at === 0 ? [value, pair[1]] : [pair[0], value];
    setWaiting(next);
    const [first, second] = next;
    const both = first !== undefined && second !== undefined ? [first, second] : undefined;
    editField(pointer, both, "Diagonals", joins);
  };
  const alone = held === undefined && (waiting[0] === undefined) !== (waiting[1] === undefined);
  return (
    <FieldGroup>
      {([0, 1] as const).map((at) => (
        <Diagonal
          key={at}
          name={NAMES[at]}
          pointer={`${pointer}/${at}`}
          value={pair[at]}
          onChange={(value, joins) => change(at, value, joins)}
        />
      ))}
      {alone ? (
        <p className="quiet small field-wide">
          The other diagonal is needed before squareness can be judged.
        </p>
      ) : null}
    </FieldGroup>
  );
}

interface DiagonalProps {
  pointer: string;
  name: string;
  value: number | undefined;
  onChange(value: number | undefined, joins: string): void;
}

function Diagonal({ pointer, name, value, onChange }: DiagonalProps) {
  useFieldClaim(pointer);
  const units = useUnits();
  const spec = span(name);
  const draft = useDraft<number>({
    value,
    write: (mm) => writeLength(mm, spec, units),
    read: (text) => readLength(text, spec, units),
    commit: onChange,
  });
  return (
    <div className="field" data-pointer={pointer} data-invalid={draft.error === undefined ? undefined : true}>
      <label className="field-label">
        {name}
        <span className="field-line">
          <input
            className="field-input"
            autoComplete="off"
            spellCheck={false}
            readOnly={!useCanEdit()}
            aria-invalid={draft.error === undefined ? undefined : true}
            value={draft.shown}
            onFocus={draft.onFocus}
            onChange={draft.onChange}
            onBlur={draft.onBlur}
            onKeyDown={draft.onKeyDown}
          />
          <span className="field-unit">{lengthUnit(spec, units)}</span>
        </span>
      </label>
      {draft.error === undefined ? null : (
        <p className="field-error" role="alert">
          {draft.error}
        </p>
      )}
    </div>
  );
}
