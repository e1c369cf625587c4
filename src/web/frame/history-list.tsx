import { useState } from "react";
import { Link } from "wouter";
import { goToChange, usePlanner } from "../state/store.ts";

/** Changes shown at once; undo reaches further back. */
const MOST_SHOWN = 60;

/** Everything that was done to the job, the latest first: press one to go back, or forward again, to it. */
export function HistoryList() {
  const [open, setOpen] = useState(false);
  return (
    <details
      className="history"
      onToggle={(event) => setOpen(event.currentTarget.open)}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || !event.currentTarget.open) return;
        event.currentTarget.open = false;
        event.currentTarget.querySelector("summary")?.focus();
      }}
    >
      <summary className="tool tool-words">History</summary>
      {open ? <Changes /> : null}
    </details>
  );
}

function Changes() {
  const { past, future } = usePlanner((planner) => planner.history);
  const mine = usePlanner((planner) => planner.access === "mine");
  const sharedId = usePlanner(({ job, room }) => (room === undefined ? undefined : job?.id));
  const all = [...past, ...future];
  const first = Math.max(0, all.length - MOST_SHOWN);
  const rows = all.map((change, at) => ({ label: change.label, done: at + 1 })).slice(first);
  return (
    <ol className="history-list" reversed aria-label="History, the latest first">
      {rows.reverse().map(({ label, done }) => (
        <li key={done}>
          <button
            type="button"
            disabled={!mine}
            aria-current={done === past.length ? "step" : undefined}
            data-undone={done > past.length || undefined}
            onClick={() => goToChange(done)}
          >
            {label}
            {done > past.length ? <span className="hidden-words"> (undone)</span> : null}
          </button>
        </li>
      ))}
      {sharedId === undefined ? null : (
        <li>
          <Link href={`/workroom/job/${sharedId}`}>Everyone’s, by day and person</Link>
        </li>
      )}
      {first === 0 ? (
        <li>
          <button
            type="button"
            disabled={!mine}
            aria-current={past.length === 0 ? "step" : undefined}
            onClick={() => goToChange(0)}
          >
            as it was at first
          </button>
        </li>
      ) : null}
    </ol>
  );
}
