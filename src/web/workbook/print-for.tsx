import { useId } from "react";
import { SET_PRESETS, type SetPreset } from "../../workbook/print-sets/index.ts";
import { prefer, usePreferences } from "../state/preferences.ts";

const READERS: Record<SetPreset, string> = {
  usual: "The usual",
  contract: "A contract",
  helper: "A helper",
  cutter: "A cutter",
  client: "The client",
  papers: "Papers for the client",
  handover: "With the shade",
  lesson: "A class",
  everything: "Everything",
};
const NAMES = Object.keys(READERS) as SetPreset[];

function isSame(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((one) => b.includes(one));
}

/** Ticks the sets of one reader. */
export function PrintFor() {
  const id = useId();
  const sets = usePreferences((preferences) => preferences.sets);
  const chosen = NAMES.find((name) => isSame(SET_PRESETS[name], sets));
  return (
    <div className="print-for">
      <label htmlFor={id} className="segments-label">
        For
      </label>
      <span className="field-line field-select">
        <select
          id={id}
          className="field-input"
          value={chosen ?? ""}
          onChange={(event) => prefer({ sets: SET_PRESETS[event.target.value as SetPreset] })}
        >
          {chosen === undefined ? <option value="">What I ticked</option> : null}
          {NAMES.map((name) => (
            <option key={name} value={name}>
              {READERS[name]}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
