import type { ReactNode } from "react";
import { Link } from "wouter";
import { redoEdit, undoEdit, usePlanner } from "../state/store.ts";
import { HistoryList } from "./history-list.tsx";
import { Mark, RedoIcon, UndoIcon } from "./icons.tsx";
import { Notices } from "./notices.tsx";
import { SaveState } from "./save-state.tsx";
import { UnitsSwitch } from "./units-switch.tsx";
import "./top-bar.css";

interface TopBarProps {
  /** Where the page stands: job, window. */
  children?: ReactNode;
  /** A job is open: it can be undone and is being saved. */
  withJob?: boolean;
}

export function TopBar({ children, withJob = false }: TopBarProps) {
  return (
    <>
      <header className="top-bar screen-only">
        <Link href="/" className="top-bar-home" aria-label="Shadewright: to the shelf">
          <Mark />
          <span className="top-bar-name">Shadewright</span>
        </Link>
        <nav className="top-bar-trail" aria-label="Where you are">
          {children}
        </nav>
        {withJob ? <JobTools /> : null}
      </header>
      <Notices />
    </>
  );
}

function JobTools() {
  const last = usePlanner((planner) => planner.history.past.at(-1)?.label);
  const next = usePlanner((planner) => planner.history.future[0]?.label);
  const mine = usePlanner((planner) => planner.access === "mine");
  return (
    <div className="top-bar-tools">
      <SaveState />
      <button
        type="button"
        className="tool"
        disabled={!mine || last === undefined}
        onClick={undoEdit}
        title={last === undefined ? "Nothing to undo" : `Undo: ${last}`}
        aria-label={last === undefined ? "Undo" : `Undo: ${last}`}
        aria-keyshortcuts="Control+Z"
      >
        <UndoIcon />
      </button>
      <button
        type="button"
        className="tool"
        disabled={!mine || next === undefined}
        onClick={redoEdit}
        title={next === undefined ? "Nothing to redo" : `Redo: ${next}`}
        aria-label={next === undefined ? "Redo" : `Redo: ${next}`}
        aria-keyshortcuts="Control+Shift+Z"
      >
        <RedoIcon />
      </button>
      <HistoryList />
      <div className="top-bar-units">
        <UnitsSwitch />
      </div>
    </div>
  );
}
