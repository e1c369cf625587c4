import { type ReactNode, useEffect, useState } from "react";
import { counted } from "../../words/index.ts";
import type { FieldChange, HistoryEntry } from "../../workroom/protocol/index.ts";
import { newUuid } from "../persistence/new-id.ts";
import { useJob } from "../state/fields.ts";
import { usePlanner } from "../state/store.ts";
import { askServer } from "./ask-server.ts";
import { meetOpen } from "./at-work.ts";
import { personName, useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";
import { changesOf, changeWords } from "./what-changed.ts";

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
            <WhatChanged entry={entry} isOpen={entry === entries[0]}>
              {day.format(new Date(entry.day))} · {personName(people, entry.person)} ·{" "}
              {counted(entry.changes, "change")}
            </WhatChanged>
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

/** The fields that one person changed on one day, read when somebody wants to see them. */
function WhatChanged({
  entry: { fromVersion, toVersion },
  isOpen,
  children,
}: {
  entry: HistoryEntry;
  isOpen: boolean;
  children: ReactNode;
}) {
  const job = useJob();
  const [isShown, setShown] = useState(isOpen);
  const [changes, setChanges] = useState<readonly FieldChange[]>();
  const { trouble, run } = useDeed();
  const jobId = job.id;
  // biome-ignore lint/correctness/useExhaustiveDependencies: read anew when more was changed
  useEffect(() => {
    if (isShown) void run(async () => setChanges(await changesOf(jobId, { fromVersion, toVersion })));
  }, [isShown, jobId, fromVersion, toVersion]);
  const words = changes && changeWords(job, changes);
  return (
    <details className="what-changed" open={isShown} onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>{children}</summary>
      <Trouble words={trouble} />
      {words === undefined ? null : words.length === 0 ? (
        <p className="quiet small">In all, nothing: it was taken back the same day.</p>
      ) : (
        <ul className="change-list">
          {words.slice(0, MOST_SHOWN).map(({ field, before, after }, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: two fields can have one name
            <li key={at}>
              {field}: {before === "" ? after : `${before} → ${after}`}
            </li>
          ))}
          {words.length > MOST_SHOWN ? <li>and {counted(words.length - MOST_SHOWN, "more")}</li> : null}
        </ul>
      )}
    </details>
  );
}

const MOST_SHOWN = 40;
