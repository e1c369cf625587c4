import { type ReactNode, useEffect, useRef } from "react";
import { Link } from "wouter";
import { counted } from "../../words/index.ts";
import type { Card } from "../persistence/database.ts";
import { BIN_DAYS, readStoredJob } from "../persistence/job-shelf.ts";
import { askToTakeOff, copyJob, keepOnShelf, takeOff, useShelf } from "./shelf-state.ts";

const day = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "long" });

/** One job on the shelf: its windows in elevation, standing on the board. */
export function ShelfJob({ card, children }: { card: Card; children: ReactNode }) {
  const asked = useShelf((shelf) => (shelf.asked?.id === card.id ? shelf.asked : undefined));
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
        <button type="button" className="button-plain small" onClick={() => void askToTakeOff(card.id)}>
          Delete<span className="hidden-words">: {card.name}</span>
        </button>
      </p>
      {asked ? <Ask card={card} isElsewhere={asked.isElsewhere} /> : null}
    </li>
  );
}

/** Nothing goes unasked; what goes can be put back for a month. */
function Ask({ card, isElsewhere }: { card: Card; isElsewhere: boolean }) {
  const keep = useRef<HTMLButtonElement>(null);
  useEffect(() => keep.current?.focus(), []);
  return (
    <div className="shelf-ask" role="alertdialog" aria-label={`Delete “${card.name}”?`}>
      <p>
        Delete “{card.name}”? It waits in the bin for {BIN_DAYS} days.
        {isElsewhere ? " It is open in another tab, which will say so." : ""}
      </p>
      <p className="page-actions">
        <button ref={keep} type="button" className="button button-small" onClick={keepOnShelf}>
          Keep it
        </button>
        <button type="button" className="button button-small" onClick={() => void takeOff(card.id)}>
          Delete it
        </button>
      </p>
    </div>
  );
}
