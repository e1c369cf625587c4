import { usePlanner } from "../state/store.ts";
import { TickIcon } from "./icons.tsx";

/** Says "Saved" only once the last edit is on disk. */
export function SaveState() {
  const saving = usePlanner((planner) => planner.saving.state);
  const access = usePlanner((planner) => planner.access);
  if (access === "elsewhere") return <span className="save-state">Reading only</span>;
  if (access !== "mine") return null;
  return (
    <span className="save-state" data-state={saving} data-testid="save-state">
      {saving === "saved" ? (
        <>
          <TickIcon /> Saved
        </>
      ) : saving === "saving" ? (
        "Saving"
      ) : (
        "Not saved"
      )}
    </span>
  );
}
