import { type FormEvent, useEffect, useState } from "react";
import type { ClientPage } from "../../workroom/protocol/index.ts";
import { Page } from "../frame/page.tsx";
import { askServer } from "./ask-server.ts";
import { PlainField } from "./plain-field.tsx";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";
import "./workroom.css";

const day = new Intl.DateTimeFormat(undefined, { dateStyle: "long" });

/** What a client sees by a link: pictures and quote. */
export function OfferedPage({ token }: { token: string }) {
  const [offered, setOffered] = useState<ClientPage>();
  const { trouble, run } = useDeed();
  const read = async () => setOffered(await askServer<ClientPage>("clientLook", { body: { token } }));
  // biome-ignore lint/correctness/useExhaustiveDependencies: the link is looked at once
  useEffect(() => void run(read), [token]);
  if (offered === undefined) {
    return (
      <Page className="page page-narrow" title="Quote" busy={trouble === undefined}>
        {trouble === undefined ? null : <h1>This quote cannot be shown</h1>}
        <Trouble words={trouble} />
      </Page>
    );
  }
  return (
    <Page className="page offered" title={offered.job}>
      <header className="offered-head">
        <p className="lines">{offered.maker ?? offered.workroom}</p>
        <h1>{offered.job}</h1>
        <p>{[offered.client, offered.number].filter(Boolean).join(" · ")}</p>
      </header>
      <ul className="offered-shades">
        {offered.shades.map((shade) => (
          <li key={`${shade.room} ${shade.name}`}>
            <img
              alt={shade.words}
              src={`data:image/svg+xml;charset=utf-8,${encodeURIComponent(shade.svg)}`}
            />
            <h2>{shade.name}</h2>
            <p className="quiet">{shade.room}</p>
            <p>{shade.words}</p>
            {shade.price === undefined ? null : <p className="offered-price">{shade.price}</p>}
          </li>
        ))}
      </ul>
      <table className="table offered-totals">
        <tbody>
          {offered.totals.map(({ name, value }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {offered.cautions.map((caution) => (
        <p key={caution} className="bench-caution">
          {caution}
        </p>
      ))}
      {offered.terms === undefined ? null : <p className="lines">{offered.terms}</p>}
      {offered.acceptedAt === undefined ? (
        <Accept token={token} until={offered.until} onAccepted={() => void run(read)} />
      ) : (
        <p role="status">
          <b>
            Accepted by {offered.acceptedBy} on {day.format(new Date(offered.acceptedAt))}.
          </b>
        </p>
      )}
      <Trouble words={trouble} />
    </Page>
  );
}

function Accept({ token, until, onAccepted }: { token: string; until: string; onAccepted(): void }) {
  const [name, setName] = useState("");
  const { isBusy, trouble, run } = useDeed();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    void run(async () => {
      await askServer("clientAccept", { body: { token, name } });
      onAccepted();
    });
  };
  return (
    <form className="room-form screen-only" onSubmit={submit} noValidate>
      <PlainField
        label="Your name"
        hint={`open until ${day.format(new Date(until))}`}
        value={name}
        onChange={setName}
      />
      <button type="submit" className="button button-main" disabled={isBusy || name.trim() === ""}>
        Accept the quote
      </button>
      <Trouble words={trouble} />
    </form>
  );
}
