import { useState } from "react";
import type { AuditEntry } from "../../workroom/protocol/index.ts";
import { askServer } from "./ask-server.ts";
import { personName, useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

const moment = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });

/** Who signed in, asked someone in, took a job off: what the server wrote down, the latest first. */
export function AuditSection() {
  const people = useRoom((room) => room.people);
  const [entries, setEntries] = useState<AuditEntry[]>([]);
  const [isAll, setAll] = useState(false);
  const { isBusy, trouble, run } = useDeed();
  const readMore = () =>
    run(async () => {
      const oldest = entries.at(-1)?.number;
      const query = oldest === undefined ? {} : { query: { before: String(oldest) } };
      const page = (await askServer<{ entries: AuditEntry[] }>("audit", query)).entries;
      setAll(page.length === 0);
      setEntries([...entries, ...page]);
    });
  return (
    <section aria-labelledby="audit-title" className="room-section">
      <h2 id="audit-title">Who did what</h2>
      <Trouble words={trouble} />
      {entries.length === 0 ? (
        <p>
          <button
            type="button"
            className="button button-small"
            disabled={isBusy}
            onClick={() => void readMore()}
          >
            Show the latest
          </button>
        </p>
      ) : (
        <>
          <div className="table-room">
            <table className="table">
              <thead>
                <tr>
                  <th scope="col">When</th>
                  <th scope="col">Who</th>
                  <th scope="col">What</th>
                </tr>
              </thead>
              <tbody>
                {entries.map(({ number, at, person, action, subject }) => (
                  <tr key={number}>
                    <td>{moment.format(new Date(at))}</td>
                    <td>{person === undefined ? "" : personName(people, person)}</td>
                    <td>{[action, subjectWords(subject)].filter(Boolean).join(": ")}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
          {isAll ? null : (
            <p className="page-actions">
              <button
                type="button"
                className="button button-small"
                disabled={isBusy}
                onClick={() => void readMore()}
              >
                Older
              </button>
            </p>
          )}
        </>
      )}
    </section>
  );

  /** A person or a job by its name, where it still has one. */
  function subjectWords(subject: string | undefined): string | undefined {
    if (subject === undefined) return undefined;
    const named =
      people.find(({ id }) => id === subject) ?? useRoom.getState().jobs?.find(({ id }) => id === subject);
    return named?.name ?? subject;
  }
}
