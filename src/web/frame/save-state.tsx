import { counted } from "../../words/index.ts";
import { usePlanner } from "../state/store.ts";
import { TickIcon } from "./icons.tsx";

/** Says "Saved" only once the last edit is on disk, and of nothing that is not in the job. */
export function SaveState() {
  const saving = usePlanner((planner) => planner.saving.state);
  const access = usePlanner((planner) => planner.access);
  const unread = usePlanner((planner) => planner.unread);
  if (access === "elsewhere" || access === "looking") return <span className="save-state">Reading only</span>;
  if (access === "taken") return <span className="save-state">Deleted</span>;
  if (access !== "mine") return null;
  const isWhole = saving === "saved" && unread === 0;
  return (
    <span
      className="save-state"
      data-state={isWhole ? "saved" : saving === "saved" ? "unread" : saving}
      data-testid="save-state"
    >
      {isWhole ? (
        <>
          <TickIcon /> Saved
        </>
      ) : saving === "saved" ? (
        `${counted(unread, "field")} not read`
      ) : saving === "saving" ? (
        "Saving"
      ) : (
        "Not saved"
      )}
    </span>
  );
}
