import { useEffect, useState } from "react";
import { counted } from "../../words/index.ts";
import type { HistoryEntry } from "../../workroom/protocol/index.ts";
import { newUuid } from "../persistence/new-id.ts";
import { useJob } from "../state/fields.ts";
import { usePlanner } from "../state/store.ts";
import { askServer } from "./ask-server.ts";
import { meetOpen } from "./at-work.ts";
import { personName, useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

const day = new Intl.DateTimeFormat(undefined, { dateStyle: "full", timeZone: "UTC" });

/** Who changed the job on which day; any of its states can be had back, and that can be taken back as well. */
export function JobHistory({ mayRestore }: { mayRestore: boolean }) {
  const jobId = useJob().id;
  const version = usePlanner((planner) => planner.room?.version);
  const people = useRoom((room) => room.people);
  const [entries, setEntries] = useState<HistoryEntry[]>([]);
  const { isBusy, trouble, run } = useDeed();
  // biome-ignore lint/correctness/useExhaustiveDependencies: read again when the job was changed
  useEffect(() => {
    void run(async () => {
      const query = { zone: Intl.DateTimeFormat().resolvedOptions().timeZone };
      const answered = await askServer<{ entries: HistoryEntry[] }>("jobHistory", {
        params: { job: jobId },
        query,
      });
      setEntries(answered.entries);
    });
  }, [jobId, version]);
  const restore = (wanted: number) =>
    void run(async () => {
      const body = { operation: newUuid(), version: wanted };
      await askServer("restoreJob", { params: { job: jobId }, body });
      await meetOpen();
    });
  return (
    <section aria-labelledby="job-history-title" className="room-section">
      <h2 id="job-history-title">History</h2>
      <Trouble words={trouble} />
      {entries.length === 0 ? <p className="quiet">Nothing was changed since it came here.</p> : null}
      <ul className="room-list">
        {entries.map((entry) => (
          <li key={`${entry.day} ${entry.person} ${entry.toVersion}`}>
            <span>
              {day.format(new Date(entry.day))} · {personName(people, entry.person)} ·{" "}
              {counted(entry.changes, "change")}
            </span>
            {mayRestore ? (
              <button
                type="button"
                className="button-plain small"
                disabled={isBusy}
                onClick={() => restore(entry.fromVersion - 1)}
              >
                As it was before
                <span className="hidden-words">
                  {" "}
                  what {personName(people, entry.person)} did on {day.format(new Date(entry.day))}
                </span>
              </button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}
