import { useEffect, useState } from "react";
import { Link } from "wouter";
import type { ClientLink } from "../../workroom/protocol/index.ts";
import { look } from "../state/store.ts";
import { askServer } from "./ask-server.ts";
import { HandOver } from "./people-section.tsx";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

const day = new Intl.DateTimeFormat(undefined, { dateStyle: "medium" });

/** Links for the client: pictures, quote and a button to accept; nothing else of the job. */
export function ClientLinks({ jobId }: { jobId: string }) {
  const [links, setLinks] = useState<ClientLink[]>([]);
  const [made, setMade] = useState<string>();
  const { isBusy, trouble, run } = useDeed();
  const params = { job: jobId };
  const read = async () =>
    setLinks((await askServer<{ links: ClientLink[] }>("clientLinks", { params })).links);
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once as the page comes
  useEffect(() => void run(read), [jobId]);
  const make = () =>
    void run(async () => {
      const { token } = await askServer<{ token: string }>("makeClientLink", { params, body: {} });
      setMade(`${location.origin}${location.pathname}#/client/${token}`);
      await read();
    });
  return (
    <section aria-labelledby="links-title" className="room-section">
      <h2 id="links-title">For the client</h2>
      <p className="quiet">A page with pictures and the quote as they are now, and a button to accept it.</p>
      <Trouble words={trouble} />
      {trouble === undefined ? null : (
        <p>
          <Link href={`/job/${jobId}`} onClick={() => look({ jump: "cost" })}>
            To the prices
          </Link>
        </p>
      )}
      <p>
        <button type="button" className="button button-small" disabled={isBusy} onClick={make}>
          Make a link
        </button>
      </p>
      {made === undefined ? null : <HandOver words="Whoever has this link sees the quote:" link={made} />}
      <ul className="room-list">
        {links.map((link) => (
          <li key={link.id}>
            <span>
              Made {day.format(new Date(link.madeAt))}, {linkState(link)}
            </span>
            {link.takenBackAt === undefined ? (
              <button
                type="button"
                className="button-plain small"
                onClick={() =>
                  void run(async () => {
                    await askServer("takeBackClientLink", { params: { link: link.id } });
                    await read();
                  })
                }
              >
                Take it back
              </button>
            ) : null}
          </li>
        ))}
      </ul>
    </section>
  );
}

function linkState({ takenBackAt, acceptedAt, acceptedBy, until }: ClientLink): string {
  if (acceptedAt !== undefined) return `accepted by ${acceptedBy} on ${day.format(new Date(acceptedAt))}`;
  if (takenBackAt !== undefined) return "taken back";
  return `open until ${day.format(new Date(until))}`;
}
