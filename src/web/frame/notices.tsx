import { useSyncExternalStore } from "react";
import { Link } from "wouter";
import type { Job } from "../../job/index.ts";
import { counted } from "../../words/index.ts";
import { loadAnew, takeRelease, useRelease } from "../offline/register.ts";
import type { SaveTrouble } from "../persistence/autosave.ts";
import { saveJobFile } from "../persistence/job-file.ts";
import { keepCopy, putBackOpen, saveAgain, takeOver, unwrittenJob } from "../persistence/session.ts";
import { setHistoryLost, usePlanner } from "../state/store.ts";
import { dismissReplaced, useReplaced } from "../workers/replaced.ts";
import { dismissImport, type ImportState, useImport } from "./importing.ts";
import "./notices.css";

/** What the maker must know about the job's keeping, where it stands in the way of nothing. */
export function Notices() {
  return (
    <div className="notices screen-only">
      <SaveNotice />
      <TabNotice />
      <TakenNotice />
      <HistoryNotice />
      <ImportNotice />
      <ReplacedNotice />
      <ReleaseNotice />
      <OfflineNotice />
    </div>
  );
}

function SaveNotice() {
  const saving = usePlanner((planner) => planner.saving);
  const open = usePlanner((planner) => planner.job);
  if (saving.state === "failed" && open) return <NotSaved trouble={saving.trouble} job={open} />;
  const unwritten = unwrittenJob();
  if (!unwritten || unwritten.id === open?.id) return null;
  return (
    <div className="notice notice-stop" role="alert">
      <p>
        <strong>Not saved.</strong> “{unwritten.name}” is in this tab alone.
      </p>
      <Link href={`/job/${unwritten.id}`} className="button button-small button-main">
        Open it again
      </Link>
      <SaveAsFile job={unwritten} />
    </div>
  );
}

const TROUBLES: Record<SaveTrouble, string> = {
  full: "This device has no room left for the job. Nothing is lost: it is all still in this tab. Save it as a file before you close the tab, or make room and try again.",
  unavailable:
    "This browser does not keep the job. Nothing is lost: it is all still in this tab. Save it as a file before you close the tab.",
  outdated:
    "A newer Shadewright keeps the shelf in this browser. Nothing is lost: it is all still in this tab. Save it as a file, then load the page anew.",
  newer: "Another tab has saved this job since. What you did here is still in this tab.",
};

function NotSaved({ trouble, job }: { trouble: SaveTrouble; job: Job }) {
  return (
    <div className="notice notice-stop" role="alert">
      <p>
        <strong>Not saved.</strong> {TROUBLES[trouble]}
      </p>
      {trouble === "newer" ? (
        <button type="button" className="button button-small button-main" onClick={() => void keepCopy()}>
          Keep mine as a copy
        </button>
      ) : (
        <button type="button" className="button button-small" onClick={saveAgain}>
          Try again
        </button>
      )}
      <SaveAsFile job={job} />
    </div>
  );
}

function SaveAsFile({ job }: { job: Job }) {
  return (
    <button type="button" className="button button-small button-main" onClick={() => void saveJobFile(job)}>
      Save the job as a file
    </button>
  );
}

function TabNotice() {
  const access = usePlanner((planner) => planner.access);
  const failed = usePlanner((planner) => planner.saving.state === "failed");
  if (access !== "elsewhere" || failed) return null;
  return (
    <div className="notice" role="status">
      <p>
        <strong>Open in another tab.</strong> This tab shows the job as it is edited there, and changes
        nothing.
      </p>
      <button type="button" className="button button-small button-main" onClick={() => void takeOver()}>
        Work here instead
      </button>
    </div>
  );
}

function HistoryNotice() {
  const isLost = usePlanner((planner) => planner.isHistoryLost && planner.job !== undefined);
  if (!isLost) return null;
  return (
    <div className="notice" role="status">
      <p>
        <strong>The list of changes could not be read.</strong> The job is as it was last saved; undo begins
        anew.
      </p>
      <button type="button" className="button button-small" onClick={() => setHistoryLost(false)}>
        Close
      </button>
    </div>
  );
}

function TakenNotice() {
  const isTaken = usePlanner((planner) => planner.access === "taken");
  const job = usePlanner((planner) => planner.job);
  if (!isTaken || !job) return null;
  return (
    <div className="notice notice-stop" role="alert">
      <p>
        <strong>Deleted.</strong> Another tab deleted this job. What you see is how it was last saved; it
        waits in the bin.
      </p>
      <button type="button" className="button button-small button-main" onClick={() => void putBackOpen()}>
        Put it back
      </button>
      <SaveAsFile job={job} />
    </div>
  );
}

function ImportNotice() {
  const state = useImport();
  switch (state.state) {
    case "idle":
      return null;
    case "reading":
      return (
        <div className="notice" role="status">
          <p>Reading {state.name}</p>
        </div>
      );
    case "copied":
      return (
        <div className="notice" role="status">
          <p>
            The shelf held a job of this kind already, so the file {state.name} stands beside it as a copy.
            Both are kept.
          </p>
          <DismissButton />
        </div>
      );
    case "restored":
      return (
        <div className="notice" role="status">
          <p>{restoredText(state)}</p>
          <DismissButton />
        </div>
      );
    case "refused":
      return (
        <div className="notice notice-stop" role="alert">
          <div>
            <p>
              <strong>{state.name} was not opened.</strong> Your own jobs are as they were.
            </p>
            <ul className="notice-issues">
              {state.issues.map((issue) => (
                <li key={`${issue.field} ${issue.wanted}`}>
                  <b>{issue.field}</b> is {issue.given}; wanted: {issue.wanted}.
                </li>
              ))}
            </ul>
          </div>
          <DismissButton />
        </div>
      );
  }
}

function restoredText({
  name,
  added,
  same,
  copied,
  unwritten,
  lost,
}: Extract<ImportState, { state: "restored" }>): string {
  const parts = [
    `${counted(added, "job")} of ${name} put on the shelf`,
    same > 0 ? `${same} stood there already` : "",
    copied > 0 ? `${copied} stood there otherwise and came as a copy beside it` : "",
    unwritten > 0 ? `${unwritten} could not be kept, for want of room: save what is open as a file` : "",
    lost > 0 ? `${lost} could not be read: the file is damaged or cut short` : "",
  ];
  return `${parts.filter(Boolean).join("; ")}.`;
}

function DismissButton() {
  return (
    <button type="button" className="button button-small" onClick={dismissImport}>
      Close
    </button>
  );
}

function ReplacedNotice() {
  const isShown = useReplaced((replaced) => replaced.isShown);
  if (!isShown) return null;
  return (
    <div className="notice" role="status">
      <p>A part of the planner stopped and was started again. Nothing is lost.</p>
      <button type="button" className="button button-small" onClick={dismissReplaced}>
        Close
      </button>
    </div>
  );
}

/** Told while it lasts: nothing is lacking, and nothing leaves the device anyway. */
function OfflineNotice() {
  const online = useSyncExternalStore(hearNetwork, () => navigator.onLine);
  if (online) return null;
  return (
    <p className="notice" role="status">
      No network. Everything works, and is saved on this device.
    </p>
  );
}

function hearNetwork(listen: () => void): () => void {
  addEventListener("online", listen);
  addEventListener("offline", listen);
  return () => {
    removeEventListener("online", listen);
    removeEventListener("offline", listen);
  };
}

function ReleaseNotice() {
  const { waiting, isTaken } = useRelease();
  if (isTaken)
    return (
      <div className="notice" role="status">
        <p>Shadewright was changed in another tab to its newer release.</p>
        <button type="button" className="button button-small" onClick={() => void loadAnew()}>
          Load this page anew
        </button>
      </div>
    );
  if (!waiting) return null;
  return (
    <div className="notice" role="status">
      <p>A newer Shadewright is ready.</p>
      <button type="button" className="button button-small" onClick={takeRelease}>
        Change to it
      </button>
    </div>
  );
}

/** Stands where a job cannot be shown. */
export function BackToShelf() {
  return (
    <Link href="/" className="button button-main">
      To the shelf
    </Link>
  );
}
