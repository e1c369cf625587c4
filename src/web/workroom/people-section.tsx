import { type FormEvent, useEffect, useState } from "react";
import type { Invitation, MadeInvitation, Person, PersonRole } from "../../workroom/protocol/index.ts";
import { askServer } from "./ask-server.ts";
import { PlainChoice, PlainField } from "./plain-field.tsx";
import { ROLE_WORDS } from "./role-words.ts";
import { useRoom } from "./room-state.ts";
import { Trouble } from "./trouble.tsx";
import { useDeed } from "./use-deed.ts";

const day = new Intl.DateTimeFormat(undefined, { day: "numeric", month: "long" });

/** Who is in the workroom, and who is asked in. */
export function PeopleSection({ isOwner, self }: { isOwner: boolean; self: string }) {
  const people = useRoom((room) => room.people);
  const [invitations, setInvitations] = useState<Invitation[]>([]);
  const [made, setMade] = useState<{ words: string; link: string }>();
  const { trouble, run } = useDeed();
  const read = async () => {
    const answered = await askServer<{ people: Person[] }>("people");
    useRoom.setState({ people: answered.people });
    if (!isOwner) return;
    setInvitations((await askServer<{ invitations: Invitation[] }>("invitations")).invitations);
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: read once as the page comes
  useEffect(() => void run(read), []);
  const change = (id: string, body: object) =>
    void run(async () => {
      await askServer("changePerson", { params: { person: id }, body });
      await read();
    });
  return (
    <section aria-labelledby="people-title" className="room-section">
      <h2 id="people-title">People</h2>
      <Trouble words={trouble} />
      <ul className="room-list">
        {people
          .filter((person) => person.isHere || isOwner)
          .map((person) => (
            <li key={person.id}>
              <span className="room-list-name">
                {person.name}
                {person.id === self ? " (you)" : ""}
                {person.isHere ? "" : " · left"}
              </span>
              {isOwner && person.id !== self ? (
                <span className="room-list-tools">
                  <PlainChoice<PersonRole>
                    label={`What ${person.name} may do`}
                    isHidden
                    options={ROLE_WORDS}
                    value={person.role}
                    onChange={(role) => change(person.id, { role })}
                  />
                  <button
                    type="button"
                    className="button-plain small"
                    onClick={() =>
                      void run(async () => {
                        const params = { person: person.id };
                        const { token } = await askServer<MadeInvitation>("recoverPerson", { params });
                        setMade({
                          words: `Sets a new password for ${person.name}, once:`,
                          link: joinLink(token),
                        });
                      })
                    }
                  >
                    New password<span className="hidden-words"> for {person.name}</span>
                  </button>
                  <button
                    type="button"
                    className="button-plain small"
                    onClick={() => change(person.id, { isHere: !person.isHere })}
                  >
                    {person.isHere ? "Take out" : "Take back in"}
                    <span className="hidden-words">: {person.name}</span>
                  </button>
                </span>
              ) : (
                <span className="quiet small">{ROLE_WORDS[person.role]}</span>
              )}
            </li>
          ))}
      </ul>
      {isOwner ? (
        <>
          <Invite
            // The link of before must not be handed over twice.
            onAsk={() => setMade(undefined)}
            onMade={(token) => {
              setMade({
                words: "Give this link to one person; it lets them in once:",
                link: joinLink(token),
              });
              void run(read);
            }}
          />
          {made === undefined ? null : <HandOver {...made} />}
          {invitations.length === 0 ? null : (
            <ul className="room-list" aria-label="Invitations that wait">
              {invitations.map((invitation) => (
                <li key={invitation.id}>
                  <span>
                    {invitation.name ?? "Someone"}, {ROLE_WORDS[invitation.role].split(":")[0]}, until{" "}
                    {day.format(new Date(invitation.until))}
                  </span>
                  <button
                    type="button"
                    className="button-plain small"
                    onClick={() =>
                      void run(async () => {
                        const params = { invitation: invitation.id };
                        await askServer("takeBackInvitation", { params });
                        await read();
                      })
                    }
                  >
                    Take it back
                  </button>
                </li>
              ))}
            </ul>
          )}
        </>
      ) : null}
    </section>
  );
}

function joinLink(token: string): string {
  return `${location.origin}${location.pathname}#/join/${token}`;
}

function Invite({ onAsk, onMade }: { onAsk(): void; onMade(token: string): void }) {
  const [name, setName] = useState("");
  const [role, setRole] = useState<PersonRole>("maker");
  const { isBusy, trouble, run } = useDeed();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onAsk();
    const body = { role, ...(name.trim() === "" ? {} : { name: name.trim() }) };
    void run(async () => {
      const { token } = await askServer<MadeInvitation>("invite", { body });
      setName("");
      onMade(token);
    });
  };
  return (
    <form className="room-form" onSubmit={submit} noValidate>
      <PlainField label="Invite" value={name} onChange={setName} />
      <PlainChoice<PersonRole> label="As" options={ROLE_WORDS} value={role} onChange={setRole} />
      <button type="submit" className="button button-small" disabled={isBusy}>
        Make a link
      </button>
      <Trouble words={trouble} />
    </form>
  );
}

/** A link that is handed over by whoever made it: shown once. */
export function HandOver({ words, link }: { words: string; link: string }) {
  return (
    <div className="hand-over">
      <label>
        <span className="field-label">{words}</span>
        <textarea
          className="field-input"
          readOnly
          value={link}
          rows={2}
          onFocus={(event) => event.target.select()}
        />
      </label>
      <button
        type="button"
        className="button button-small"
        onClick={() => void navigator.clipboard?.writeText(link).catch(() => {})}
      >
        Copy
      </button>
    </div>
  );
}
