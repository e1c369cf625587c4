import { useEffect, useState } from "react";
import type { Session } from "../../workroom/protocol/index.ts";
import { askServer } from "./ask-server.ts";
import { personName, useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

const moment = new Intl.DateTimeFormat(undefined, { dateStyle: "medium", timeStyle: "short" });

/** Where one is signed in; each can be ended from here. */
export function DevicesSection({ self }: { self: string }) {
  const people = useRoom((room) => room.people);
  const [sessions, setSessions] = useState<Session[]>([]);
  const { trouble, run } = useDeed();
  const read = async () => setSessions((await askServer<{ sessions: Session[] }>("sessions")).sessions);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once as the page comes
  useEffect(() => void run(read), []);
  return (
    <section aria-labelledby="devices-title" className="room-section">
      <h2 id="devices-title">Signed in at</h2>
      <Trouble words={trouble} />
      <ul className="room-list">
        {sessions.map((session) => (
          <li key={session.id}>
            <span>
              {session.person === self ? "" : `${personName(people, session.person)}: `}
              {session.isThis ? "this device" : deviceWords(session.device)}
              <span className="quiet small"> · {moment.format(new Date(session.seenAt))}</span>
            </span>
            {session.isThis ? null : (
              <button
                type="button"
                className="button-plain small"
                onClick={() =>
                  void run(async () => {
                    await askServer("endSession", { params: { session: session.id } });
                    await read();
                  })
                }
              >
                Sign out there
              </button>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** The browser's long name of itself, as far as people know it. */
function deviceWords(device: string): string {
  const browser = /(Firefox|Edg|Chrome|Safari)\//.exec(device)?.[1]?.replace("Edg", "Edge");
  const system = /Android|iPhone|iPad|Windows|Macintosh|CrOS|Linux/.exec(device)?.[0];
  return [browser, system].filter(Boolean).join(" on ") || "another device";
}
