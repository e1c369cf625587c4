import { type FormEvent, useId, useState } from "react";
import { goToJob } from "../frame/importing.ts";
import { lengthUnit, readLength } from "../inputs/read-write.ts";
import { span } from "../inputs/spec.ts";
import { newId } from "../persistence/new-id.ts";
import { useCanEdit, useJob, useUnits } from "../state/fields.ts";
import { newWindow } from "../state/job-door.ts";
import { edit } from "../state/store.ts";

const SIDE = span("Length");

/** A window from a name, a width and a length. */
export function AddWindow({ room }: { room: number }) {
  const job = useJob();
  const units = useUnits();
  const mine = useCanEdit();
  const [name, setName] = useState("");
  const [width, setWidth] = useState("");
  const [length, setLength] = useState("");
  const [error, setError] = useState<string>();
  const unit = lengthUnit(SIDE, units);

  const add = (event: FormEvent) => {
    event.preventDefault();
    const widthRead = readLength(width, SIDE, units);
    const lengthRead = readLength(length, SIDE, units);
    if (!widthRead.ok) return setError(`Width: ${widthRead.reason}`);
    if (!lengthRead.ok) return setError(`Length: ${lengthRead.reason}`);
    const count = job.rooms[room]?.windows.length ?? 0;
    const window = newWindow({
      id: newId("window"),
      name: name.trim().replace(/\p{Cc}/gu, " ") || `Window ${count + 1}`,
      widthMm: widthRead.value,
      heightMm: lengthRead.value,
    });
    edit({ label: "Add a window", patch: [{ op: "add", path: `/rooms/${room}/windows/-`, value: window }] });
    goToJob(job.id, window.id);
  };

  return (
    <form className="add-window" onSubmit={add} noValidate>
      <Small label="New window" value={name} onChange={setName} most={120} />
      <Small label="Width" unit={unit} value={width} onChange={setWidth} />
      <Small label="Length" unit={unit} value={length} onChange={setLength} />
      <button type="submit" className="button button-small" disabled={!mine}>
        Add it
      </button>
      {error === undefined ? null : (
        <p className="field-error" role="alert">
          {error}
        </p>
      )}
    </form>
  );
}

interface SmallProps {
  label: string;
  unit?: string;
  value: string;
  onChange(value: string): void;
  most?: number;
}

function Small({ label, unit, value, onChange, most = 60 }: SmallProps) {
  const id = useId();
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      <span className="field-line">
        <input
          id={id}
          className="field-input"
          autoComplete="off"
          maxLength={most}
          value={value}
          onChange={(event) => onChange(event.target.value)}
        />
        {unit === undefined ? null : <span className="field-unit">{unit}</span>}
      </span>
    </div>
  );
}
