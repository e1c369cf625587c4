import type { ReactNode } from "react";
import { Link } from "wouter";
import { counted } from "../../words/index.ts";
import type { Card } from "../persistence/database.ts";
import { readStoredJob } from "../persistence/job-shelf.ts";
import { copyJob, takeOff, useShelf } from "./shelf-state.ts";

const day = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "long" });

/** One job on the shelf: its windows in elevation, standing on the board. */
export function ShelfJob({ card, children }: { card: Card; children: ReactNode }) {
  const busy = useShelf((shelf) => shelf.busy === card.id);
  return (
    <li className="shelf-job">
      <Link href={`/job/${card.id}`} className="shelf-job-link">
        <span className="shelf-job-plate">{children}</span>
        <span className="shelf-job-name">{card.name}</span>
        <span className="shelf-job-about">
          {card.demo ? "Demonstration · " : ""}
          {card.client === undefined ? "" : `${card.client} · `}
          {counted(card.windows, "window")} · {day.format(card.savedAt)}
        </span>
      </Link>
      <p className="shelf-job-actions">
        <button
          type="button"
          className="button-plain small"
          onClick={async () => {
            const stored = await readStoredJob(card.id);
            if (stored) await copyJob(stored);
          }}
        >
          Copy<span className="hidden-words"> {card.name}</span>
        </button>
        <button type="button" className="button-plain small" onClick={() => void takeOff(card.id)}>
          Take off the shelf<span className="hidden-words">: {card.name}</span>
        </button>
      </p>
      {busy ? (
        <p className="small" role="alert">
          It is open in another tab. Close it there first.
        </p>
      ) : null}
    </li>
  );
}
