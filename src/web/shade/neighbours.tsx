import { Link } from "wouter";
import { useJob } from "../state/fields.ts";

/** The windows before and after this one, in the order of the rooms. */
export function Neighbours({ windowId }: { windowId: string }) {
  const job = useJob();
  const windows = job.rooms.flatMap((room) => room.windows);
  const at = windows.findIndex((window) => window.id === windowId);
  const [before, after] = [windows[at - 1], windows[at + 1]];
  if (!before && !after) return null;
  return (
    <nav className="neighbours small screen-only" aria-label="Other windows">
      {before ? <Link href={`/job/${job.id}/${before.id}`}>‹ {before.name}</Link> : <span />}
      {after ? <Link href={`/job/${job.id}/${after.id}`}>{after.name} ›</Link> : null}
    </nav>
  );
}
