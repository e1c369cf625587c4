import { Link } from "wouter";
import { useShallow } from "zustand/react/shallow";
import { type Planner, usePlanner } from "../state/store.ts";

/** Ids and names of the windows before and after one, in the order of the rooms. */
function neighboursOf({ job }: Planner, windowId: string) {
  const windows = job?.rooms.flatMap((room) => room.windows) ?? [];
  const at = windows.findIndex((window) => window.id === windowId);
  const [before, after] = [windows[at - 1], windows[at + 1]];
  return {
    jobId: job?.id,
    beforeId: before?.id,
    beforeName: before?.name,
    afterId: after?.id,
    afterName: after?.name,
  };
}

/** The windows before and after this one. */
export function Neighbours({ windowId }: { windowId: string }) {
  const { jobId, beforeId, beforeName, afterId, afterName } = usePlanner(
    useShallow((planner: Planner) => neighboursOf(planner, windowId)),
  );
  if (beforeId === undefined && afterId === undefined) return null;
  return (
    <nav className="neighbours small screen-only" aria-label="Other windows">
      {beforeId === undefined ? <span /> : <Link href={`/job/${jobId}/${beforeId}`}>‹ {beforeName}</Link>}
      {afterId === undefined ? null : <Link href={`/job/${jobId}/${afterId}`}>{afterName} ›</Link>}
    </nav>
  );
}
