import { SYSTEM_DEFAULT_RULER, type UnitSystem } from "../../units/index.ts";
import { Segments } from "../inputs/segments.tsx";
import { useCanEdit } from "../state/fields.ts";
import { prefer } from "../state/preferences.ts";
import { edit, usePlanner } from "../state/store.ts";

const SYSTEMS: Record<UnitSystem, string> = { imperial: "in", metric: "mm" };

/** Inches or millimetres for the whole job. */
export function UnitsSwitch() {
  const system = usePlanner((planner) => planner.job?.units.system);
  return (
    <Segments
      label="Units of the job"
      quiet
      options={SYSTEMS}
      value={system}
      onChange={changeUnits}
      readOnly={!useCanEdit()}
    />
  );
}

function changeUnits(system: UnitSystem): void {
  const value = { system, ruler: SYSTEM_DEFAULT_RULER[system] };
  edit({ label: "Units", patch: [{ op: "replace", path: "/units", value }] });
  prefer({ system });
}
